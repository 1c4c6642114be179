#include "intake/footer_words.hpp"

#include "intake/plain_text.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace tracewright {

namespace {

constexpr std::array words{"total",
                           "totals",
                           "sum",
                           "average",
                           "avg",
                           "mean",
                           "min",
                           "minimum",
                           "max",
                           "maximum",
                           "count",
                           "summe",
                           "gesamt",
                           "gesamtsumme",
                           "insgesamt",
                           "mittel",
                           "mittelwert",
                           "durchschnitt",
                           "schnitt",
                           "anzahl",
                           "totaux",
                           "somme",
                           "moyenne",
                           "nombre",
                           "totales",
                           "suma",
                           "promedio",
                           "media",
                           "m\xC3\xADnimo",
                           "m\xC3\xA1ximo",
                           "recuento",
                           "conteo",
                           "\xE6\x80\xBB\xE8\xAE\xA1",
                           "\xE5\x90\x88\xE8\xAE\xA1",
                           "\xE5\xB9\xB3\xE5\x9D\x87"};

}  // namespace

bool sums_up(std::string_view plain_text) {
    if (plain_text.find_first_of("0123456789") != std::string_view::npos) {
        return false;
    }
    const std::string small = lower_case(plain_text);
    const std::string_view first = std::string_view(small).substr(0, small.find_first_of(" :.=("));
    return std::ranges::find(words, first) != words.end();
}

}  // namespace tracewright

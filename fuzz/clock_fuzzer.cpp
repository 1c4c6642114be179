// Any short text as a time and as a number: an answer within what can be.
#include "intake/clock_text.hpp"
#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"

#include <cstdint>
#include <cstdlib>

using namespace tracewright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const std::string text = plain(bytes);
    if (const auto time = written_time(text)) {
        for (const DateOrder order :
             {DateOrder::day_first, DateOrder::month_first, DateOrder::year_first}) {
            (void)time->date(order);
        }
        if (time->clock.count() < 0 || time->clock > std::chrono::hours{24}) {
            std::abort();
        }
    }
    for (const char mark : {'.', ','}) {
        (void)written_number(text, mark);
        (void)written_glucose(text, mark);
    }
    (void)mark_evidence(text);
    return 0;
}

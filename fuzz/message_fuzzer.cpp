// Any pasted message: every entry has a part of the message behind it, what is not certain says so,
// and nothing that was denied or not found is summed.
#include "intake/client_message.hpp"

#include <cmath>
#include <cstdlib>
#include <string_view>

using namespace tracewright;

namespace {

void must(bool holds) {
    if (!holds) {
        std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    MessageOptions options;
    options.day = CivilDate{std::chrono::year{2026} / 3 / 3};
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const ProposedEntry& one : client_message(text, options)) {
        must(!one.time_missing || one.entry.time_uncertain);
        must(!one.entry.until || *one.entry.until >= one.entry.at);
        must(one.entry.kind == DiaryKind::meal || !one.eaten);
        if (!one.eaten) {
            continue;
        }
        for (const EatenFood& food : one.eaten->foods) {
            must(!(food.denied && food.counted));
            must(food.confidence >= 0 && food.confidence <= 1);
            must(std::isfinite(food.portion.grams) && food.portion.grams >= 0);
        }
        must(!one.eaten->total || std::isfinite(one.eaten->total->grams));
    }
    return 0;
}

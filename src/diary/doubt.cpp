#include "diary/doubt.hpp"

namespace tracewright {

const char* name_of(DoubtAbout about) {
    switch (about) {
        case DoubtAbout::kind:
            return "kind";
        case DoubtAbout::day:
            return "day";
        case DoubtAbout::time:
            return "time";
        case DoubtAbout::food:
            return "food";
        case DoubtAbout::spelling:
            return "spelling";
        case DoubtAbout::portion:
            return "portion";
        case DoubtAbout::eaten:
            return "eaten";
        case DoubtAbout::amount:
            return "amount";
    }
    return "";
}

}  // namespace tracewright

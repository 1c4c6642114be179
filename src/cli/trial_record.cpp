#include "cli/trial_record.hpp"

#include "store/trial_document.hpp"

namespace tracewright {

Json json_of_trial(const Trial& trial) {
    return Json::parse(trial_document(trial));
}

}  // namespace tracewright

#include "render/labs_json.hpp"

#include "coaching/labs_not_read.hpp"
#include "time/day_text.hpp"

#include <array>

namespace tracewright {

Json json_of_labs(const LabReport& report, const ReviewInput& input) {
    constexpr std::array states = {"meets",          "too_high",  "not_yet",     "on_medicine",
                                   "medicines_open", "no_result", "clinic_leads"};
    const auto date = [](std::optional<CivilDate> day) {
        return day ? Json(day_text(*day)) : Json(nullptr);
    };
    Json json = {{"version", labs_json_version}, {"seed", input.seed}};
    json["line"] = Json::array();
    for (const LineRow& row : report.line) {
        json["line"].push_back(
            {{"on", day_text(row.on)}, {"kind", row.kind}, {"words", row.words}});
    }
    json["not_read"] = Json::array();
    for (const LabResult& lab : report.not_read) {
        json["not_read"].push_back({{"on", lab.on == CivilDate{} ? Json() : Json(day_text(lab.on))},
                                    {"words", lab_words(lab)}});
    }
    json["expected"] = nullptr;
    if (report.expected && report.expected->none_because.empty()) {
        const ExpectedA1c& expected = *report.expected;
        json["expected"] = {{"on", day_text(expected.on)},
                            {"percent", expected.percent},
                            {"interval95", {expected.interval95[0], expected.interval95[1]}},
                            {"days_seen", expected.days_seen},
                            {"weight_seen", expected.weight_seen},
                            {"pairs", expected.offset.pairs},
                            {"offset", expected.offset.value}};
    }
    const RemissionCheck& check = report.remission;
    json["remission"] = {{"state", states.at(static_cast<std::size_t>(check.state))},
                         {"earliest", date(check.earliest)},
                         {"test_next", date(check.test_next)},
                         {"blocks", check.blocks},
                         {"a1c_doubted", check.a1c_doubted}};
    json["next_test"] = date(report.next_test);
    json["findings"] = Json::array();
    for (const Finding& finding : report.findings) {
        json["findings"].push_back(json_of(finding));
    }
    return json;
}

}  // namespace tracewright

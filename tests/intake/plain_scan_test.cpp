// The fast way and the careful way must tell the same of any file.
#include "intake/bring_in.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;

namespace {

bool same(const Intake& a, const Intake& b) {
    const auto guesses = [](const Intake& intake) {
        std::string text;
        for (const Guess& g : intake.guesses) {
            text += g.what + "=" + g.found + "/" + g.sure + "/" + g.why + "\n";
        }
        for (const ColumnRole& c : intake.columns) {
            text += c.title + "->" + c.role + " " + c.unit + "\n";
        }
        for (const auto& row : intake.sample) {
            for (const std::string& cell : row) {
                text += cell + "|";
            }
        }
        return text;
    };
    bool equal = a.readings == b.readings && a.unit == b.unit && guesses(a) == guesses(b) &&
                 a.diary.size() == b.diary.size() && a.error.has_value() == b.error.has_value() &&
                 a.ledger.notes().size() == b.ledger.notes().size() &&
                 a.held.size() == b.held.size();
    for (const Fate fate : {Fate::stored, Fate::duplicate, Fate::conflict, Fate::rejected,
                            Fate::question, Fate::not_data}) {
        equal = equal && a.ledger.with(fate) == b.ledger.with(fate);
    }
    return equal;
}

void expect_same(const std::string& text, const ZoneHistory& zones) {
    IntakeOptions fast;
    fast.zones = zones;
    IntakeOptions careful = fast;
    careful.fast = false;
    RC_LOG() << text << zones.zone_at(Instant{}).name() << "\n";
    RC_ASSERT(same(bring_in_bytes(text, "x", fast), bring_in_bytes(text, "x", careful)));
}

std::string two(int n) {
    return (n < 10 ? "0" : "") + std::to_string(n);
}

}  // namespace

RC_GTEST_PROP(PlainScan, tells_the_same_as_the_careful_way_of_mostly_plain_files, ()) {
    const bool mmol = *rc::gen::arbitrary<bool>();
    const bool odd = *rc::gen::inRange(0, 3) == 0;
    const int step = *rc::gen::element(1, 5, 15);
    const int start_day = *rc::gen::element(2, 24, 29, 30);  // 29 March: the clock changes
    std::string text = *rc::gen::arbitrary<bool>() ? "title\n" : "";
    text += mmol ? "time,glucose mmol/L\n" : "time,glucose\n";
    int minute = 0;
    for (int i = *rc::gen::inRange(3, 120); i > 0; --i) {
        const int at = minute % 1440;
        std::string value = mmol ? std::to_string(*rc::gen::inRange(3, 18)) + "." +
                                       std::to_string(*rc::gen::inRange(0, 10))
                                 : std::to_string(*rc::gen::inRange(50, 300));
        if (odd && *rc::gen::inRange(0, 20) == 0) {
            value = *rc::gen::element<std::string>("LOW", "", "abc", "\"120\"", "5,6", "700",
                                                   "5.555", "0");
        }
        text += "2026-03-" + two(start_day + minute / 1440 > 31 ? 31 : start_day + minute / 1440) +
                *rc::gen::element<std::string>(" ", " ", "T") + two(at / 60) + ":" + two(at % 60) +
                (*rc::gen::inRange(0, 10) == 0 ? ":00" : "") + "," + value +
                *rc::gen::element<std::string>("\n", "\n", "\r\n", "\n\n");
        minute += odd && *rc::gen::inRange(0, 15) == 0 ? *rc::gen::inRange(0, 90) : step;
    }
    const ZoneHistory zones{*rc::gen::arbitrary<bool>() ? *Zone::named("Europe/Berlin")
                                                        : Zone::floating()};
    expect_same(text, zones);
}

#include "render/trial_calendar_file.hpp"

#include "render/review_json.hpp"
#include "time/day_text.hpp"
#include "time/zone.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

const ZoneHistory& utc() {
    static const ZoneHistory zones(Zone::fixed(std::chrono::seconds{0}));
    return zones;
}

// Lines of at most 75 octets; what follows begins with a space.
std::string folded(std::string line) {
    std::string text;
    while (line.size() > 75) {
        std::size_t cut = 75;
        while ((static_cast<unsigned char>(line[cut]) & 0xC0U) == 0x80U) {
            --cut;
        }
        text += line.substr(0, cut) + "\r\n";
        line = " " + line.substr(cut);
    }
    return text + line + "\r\n";
}

std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : text) {
        if (c == ',' || c == ';' || c == '\\') {
            result += '\\';
        }
        result += c;
    }
    return result;
}

std::string basic_date(CivilDate date) {
    std::string text = day_text(date);
    std::erase(text, '-');
    return text;
}

std::string basic_time(Instant at) {
    std::string text = iso_time(at, utc()).substr(0, 19);
    std::erase(text, '-');
    std::erase(text, ':');
    return text + "Z";
}

}  // namespace

std::string trial_calendar(const Trial& trial) {
    std::string text = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Tracewright//trial//EN\r\n";
    for (const TrialBlock& block : trial.blocks) {
        for (const CivilDate day : block.days) {
            const std::string& arm = day == block.day_of_a() ? trial.a : trial.b;
            text += "BEGIN:VEVENT\r\n";
            text += folded(
                fmt::format("UID:{}-{}-{}@tracewright", trial.code, trial.seed, basic_date(day)));
            text += "DTSTAMP:" + basic_time(trial.drawn_at) + "\r\n";
            text += "DTSTART;VALUE=DATE:" + basic_date(day) + "\r\n";
            text += "DTEND;VALUE=DATE:" + basic_date(day + std::chrono::days{1}) + "\r\n";
            text += folded("SUMMARY:" + escaped(arm));
            text += "TRANSP:TRANSPARENT\r\nEND:VEVENT\r\n";
        }
    }
    return text + "END:VCALENDAR\r\n";
}

}  // namespace tracewright

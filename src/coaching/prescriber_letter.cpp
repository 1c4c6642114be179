#include "coaching/prescriber_letter.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/lows_and_highs.hpp"
#include "coaching/weight.hpp"
#include "findings/edge_words.hpp"
#include "findings/wording.hpp"
#include "time/clock_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

namespace tracewright {

namespace {

// Rows listed besides every very low; the rest is counted. Ours: one sheet.
constexpr std::size_t most_lows = 8;
constexpr std::size_t most_highs = 5;
constexpr std::size_t most_above_300 = 10;
constexpr std::size_t most_not_said = 3;
constexpr std::chrono::days stopped_lately{90};

const char* licence_words(Licence licence) {
    switch (licence) {
        case Licence::none:
            return "I am a lifestyle coach and not licensed to treat. I speak of the client's own "
                   "record and habits.";
        case Licence::dietitian:
            return "I am a lifestyle coach, licensed as a dietitian.";
        case Licence::nurse:
            return "I am a lifestyle coach, licensed as a nurse.";
        case Licence::other:
            break;
    }
    return "I am a lifestyle coach, with a licence of my own.";
}

class Letter {
  public:
    Letter(const PaperClient& client, const LetterAbout& about, const LetterRecord& record)
        : client_(client), about_(about), record_(record) {}

    Paper write() {
        head();
        reasons();
        lows_and_highs_of_late();
        medicines();
        agreed();
        what_cannot_be_said();
        scope();
        return std::move(paper_);
    }

  private:
    WayOfWriting way() const { return client_.review.input.zones.writing(); }
    void add(PaperBlock block) { paper_.blocks.push_back(std::move(block)); }
    void say(std::string sentence, bool strong = false) {
        add(PaperSentence{std::move(sentence), strong});
    }

    void head() {
        paper_.title = "Letter to the prescriber";
        paper_.reader = PaperReader::prescriber;
        paper_.made = client_.made();
        paper_.may_go_on = true;
        const std::string& name = client_.review.input.of_whom;
        paper_.foot = "Letter about " + (name.empty() ? std::string("a client") : name) + ", " +
                      full_date(client_.today(), way()) + ".";
        const Contact* to = prescriber_of(client_.facts);
        add(PaperContact{to != nullptr && !to->name.empty() ? "To " + to->name : "To",
                         to != nullptr && !to->telephone.empty() ? "telephone " + to->telephone
                                                                 : std::string()});
        say(fmt::format("About {}{}. Written on {}{}.", name.empty() ? "a client of mine" : name,
                        client_.facts.born_year ? fmt::format(", born {}", *client_.facts.born_year)
                                                : std::string(),
                        full_date(client_.today(), way()),
                        client_.coach.empty() ? "" : " by " + client_.coach + ", lifestyle coach"));
    }

    void reasons() {
        const LetterReasons letter = letter_reasons(client_, about_);
        add(PaperHeading{"Why I write"});
        if (letter.reasons.empty()) {
            say("I have no open question. This is a summary of the days below.");
        } else {
            add(PaperList{letter.reasons});
        }
        say(client_.review.last_reading);
        if (!letter.asked.empty()) {
            add(PaperHeading{"What I ask"});
            add(PaperList{letter.asked});
        }
        if (letter.answer_opens) {
            add(RoomToWrite{"Your answer, by whom, on which day, and valid until when:", 2});
        }
    }

    // Empty: a review without readings.
    std::optional<Interval> days_of_review() const {
        const std::vector<ReviewDay>& shown = client_.review.days;
        if (shown.empty()) {
            return std::nullopt;
        }
        return Interval{shown.front().day.from, shown.back().day.to};
    }

    // The review's days, and those of the last 14 that any wear saw; the last 14 without a reading.
    Interval days() const {
        Instant last{};
        for (const Wear& wear : record_.wears) {
            last = wear.empty() ? last : std::max(last, wear.readings.back().at);
        }
        const auto& zones = client_.review.input.zones;
        const CivilDay last_day =
            zones.day_of(zones.date_at(last == Instant{} ? client_.review.input.as_of : last));
        const Interval of_late{
            zones.day_of(last_day.date - (letter_days - std::chrono::days{1})).from, last_day.to};
        const auto reviewed = days_of_review();
        if (!reviewed) {
            return of_late;
        }
        Interval days = *reviewed;
        for (const Wear& wear : record_.wears) {
            const Interval seen = wear.empty() ? Interval{} : of_readings(wear, of_late);
            if (seen.length().count() > 0) {
                days.from = std::min(days.from, zones.day_of(zones.date_at(seen.from)).from);
                days.to = std::max(days.to, last_day.to);
            }
        }
        return days;
    }

    static Interval of_readings(const Wear& wear, Interval within) {
        const Interval seen = intersection(wear.sensed_span(), within);
        return seen.length().count() > 0 ? seen : Interval{};
    }

    std::string dates_of(Interval days) const {
        const auto& zones = client_.review.input.zones;
        return date_range(zones.date_at(days.from),
                          zones.date_at(days.to - std::chrono::seconds{1}), way());
    }

    std::string clock_at(Instant at) const {
        const WallTime wall = client_.review.input.zones.wall_time(at);
        return clock_words(std::chrono::floor<std::chrono::minutes>(
                               wall - std::chrono::floor<std::chrono::days>(wall)),
                           way());
    }

    void lows_and_highs_of_late() {
        const Interval window = days();
        const auto& zones = client_.review.input.zones;
        const GlucoseUnit unit = client_.review.input.unit;
        const auto all = lows_and_highs(record_.wears, record_.diary, window, unit);
        add(PaperHeading{"Lows and very highs, " + dates_of(window)});
        say_finding("lows", window);
        std::size_t lows = 0;
        std::size_t highs = 0;
        std::size_t above_300 = 0;  // what the ladder tells stands in the table too
        PaperTable table{{"from", "what", "for", "lowest or highest", "seen by"},
                         {0.25, 0.25, 0.14, 0.21, 0.15},
                         {}};
        for (const LowOrHigh& one : all) {
            std::size_t& count = one.low ? lows : one.above_300 ? above_300 : highs;
            count += one.very_low ? 0 : 1;
            const std::size_t most = one.low         ? most_lows
                                     : one.above_300 ? most_above_300
                                                     : most_highs;
            if (one.very_low || count <= most) {
                // By its time the highest is found among what leads the letter.
                const bool timed = one.above_300 && one.value_at != one.at;
                table.rows.push_back(
                    {day_and_time(zones.wall_time(one.at), way()), one.what, one.lasted,
                     timed ? one.value + " at " + clock_at(one.value_at) : one.value, one.seen_by});
            }
        }
        if (!table.rows.empty()) {
            add(std::move(table));
        }
        const auto left_out = [](std::size_t count, std::size_t most) {
            return count > most ? count - most : 0;
        };
        if (const auto more = left_out(lows, most_lows) + left_out(highs, most_highs) +
                              left_out(above_300, most_above_300);
            more > 0) {
            say(fmt::format("{} earlier ones, none of them very low, are not listed.", more));
        }
        say(fmt::format("Low is below {}, very low below {}, very high above {}.",
                        edge_words(70, unit), edge_words(54, unit), edge_words(250, unit)));
        say_finding("in_range", window);
    }

    // What a review says of other days than the heading names its own.
    void say_finding(std::string_view code, Interval of_heading) {
        const auto found = std::ranges::find(client_.review.findings, code, &Finding::code);
        if (found == client_.review.findings.end()) {
            return;
        }
        const auto reviewed = days_of_review();
        const bool others =
            reviewed && (reviewed->from != of_heading.from || reviewed->to != of_heading.to);
        say(others ? dates_of(*reviewed) + ": " + found->sentence : found->sentence);
    }

    std::string medicine_line(const MedicineLine& line) const {
        return line.written + (line.from ? ", since " + full_date(*line.from, way()) : "") +
               (line.until ? ", until " + full_date(*line.until, way()) : "");
    }

    // What was taken when the client was asked, or since, belongs to the answer.
    bool belongs_to_the_list(const MedicineLine& line) const {
        const auto& asked = client_.facts.medicines_asked_on;
        return !line.until || client_.today() - *line.until <= stopped_lately ||
               (asked && *line.until >= *asked);
    }

    void medicines() {
        add(PaperHeading{"Medicines, as the client told me"});
        std::vector<std::string> lines;
        bool all_ended = true;
        for (const MedicineLine& line : client_.facts.medicines) {
            if (belongs_to_the_list(line)) {
                lines.push_back(medicine_line(line));
                all_ended = all_ended && line.until && *line.until < client_.today();
            }
        }
        const auto& asked = client_.facts.medicines_asked_on;
        if (!asked) {
            say("The client was not asked about medicines yet: this list is not complete.");
        } else {
            say("Asked on " + full_date(*asked, way()) + (lines.empty() ? ": none." : "."));
        }
        if (!lines.empty()) {
            add(PaperList{std::move(lines)});
            if (all_ended) {
                say("No other medicine was told, and none that goes on.");
            }
        }
        const MedicineRisks risks = client_.medicines.risks_at(client_.review.input.as_of);
        if (asked && !risks.answered) {
            say("Not every name is known to me: please compare with your own list.");
        }
    }

    void agreed() {
        add(PaperHeading{"What the client and I agreed"});
        const auto& change = client_.facts.agreed_change;
        if (!change || change->outcome != ChangeOutcome::open) {
            say("No change is agreed at present.");
        } else {
            std::string sentence = "\"" + change->words + "\"";
            for (const std::string& part : {change->when, change->where, change->how_often}) {
                sentence += part.empty() ? "" : ", " + part;
            }
            sentence +=
                change->agreed_on ? ", agreed on " + full_date(*change->agreed_on, way()) : "";
            const auto closed = gates_since_agreed(client_.care());
            if (!closed.empty()) {
                say(sentence + ". It does not go on: something that comes first has closed it. " +
                    closed_since_words(closed));
            } else {
                sentence += change->check_on
                                ? ", to be looked at on " + day_words(*change->check_on, way())
                                : "";
                say(sentence + ".");
            }
        }
        const auto weights = weights_of(client_.facts.labs);
        if (const auto fall = weight_fall(weights, client_.today())) {
            say(fmt::format("Weight fell by {} from {} to {}.", percent_words(fall->percent),
                            full_date(fall->from.on, way()), full_date(fall->to.on, way())));
        }
    }

    void what_cannot_be_said() {
        std::vector<std::string> lines = client_.review.cannot_say;
        if (lines.size() > most_not_said) {
            lines.resize(most_not_said);
        }
        lines.emplace_back(
            "A sensor can read wrong, low when it is lain on: no reading here was "
            "checked in a laboratory.");
        add(PaperHeading{"What these data can't say"});
        add(PaperList{std::move(lines)});
    }

    void scope() {
        say(licence_words(client_.licence));
        say("This letter tells what was seen and asks. Medicines are yours alone to change, and "
            "local guidance comes first. It is no alarm and no medical advice.");
    }

    const PaperClient& client_;
    const LetterAbout& about_;
    const LetterRecord& record_;
    Paper paper_;
};

}  // namespace

Paper prescriber_letter(const PaperClient& client, const LetterAbout& about,
                        const LetterRecord& record) {
    return Letter(client, about, record).write();
}

}  // namespace tracewright

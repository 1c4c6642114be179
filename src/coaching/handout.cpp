#include "coaching/handout.hpp"

#include "coaching/agreed_change.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/first_aid.hpp"
#include "coaching/gates.hpp"
#include "coaching/handout_lead.hpp"
#include "coaching/handout_words.hpp"
#include "coaching/numbers_in_text.hpp"
#include "coaching/proposed_in_words.hpp"
#include "coaching/reading_grade.hpp"
#include "coaching/restricted_eating.hpp"
#include "coaching/type_signs.hpp"
#include "diary/says_something.hpp"
#include "diary/written_words.hpp"
#include "findings/review_findings.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace tracewright {

namespace {

constexpr double highest_grade = 6;
constexpr double hours_to_praise = 12;  // fewer than half a day is no good thing to lead with; ours
constexpr std::chrono::days old_after{14};  // ours
constexpr HandoutWords words = english_handout;

template <typename... Args>
std::string filled(const char* sentence, const Args&... args) {
    return fmt::format(fmt::runtime(sentence), args...);
}

std::string age_in_words(CivilDate then, CivilDate today) {
    const auto days = (today - then).count();
    return days <= 0    ? words.today
           : days == 1  ? words.yesterday
           : days <= 7  ? words.some_days_ago
           : days <= 31 ? words.more_than_a_week_ago
                        : words.more_than_a_month_ago;
}

class Writer {
  public:
    Writer(const PaperClient& client, const HandoutWishes& wishes, bool with_hours)
        : client_(client),
          care_(client.care()),
          risks_(client.medicines.risks_at(client.review.input.as_of)),
          with_hours_(with_hours) {
        const bool turned_down = numbers_turned_down(client.facts.cautions.eating);
        made_.fewer_numbers = turned_down && !says_something(wishes.numbers_because);
        numbers_turned_on_ = turned_down && !made_.fewer_numbers;
    }

    Handout write() {
        head();
        lead();
        good_thing();
        picture();
        change();
        whom_to_call();
        say(words.cautions);
        judge();
        return std::move(made_);
    }

    bool told_hours() const { return told_hours_; }

  private:
    WayOfWriting way() const { return client_.review.input.zones.writing(); }
    void add(PaperBlock block) { made_.paper.blocks.push_back(std::move(block)); }
    void say(std::string sentence, bool strong = false) {
        add(PaperSentence{std::move(sentence), strong});
    }
    void tell_coach(std::string line) { made_.for_coach.push_back(std::move(line)); }

    void head() {
        made_.paper.title = words.title;
        made_.paper.made = client_.made();
        if (std::string over = client_.consent_over(); !over.empty()) {
            tell_coach(std::move(over));
        }
        const std::string& name = client_.review.input.of_whom;
        const std::string on = full_date(client_.today(), way());
        say(name.empty() ? filled(words.for_nobody_named, on) : filled(words.for_whom, name, on));
        if (client_.review.trace.readings.empty()) {
            say(words.no_reading);
            return;
        }
        const Instant at = client_.review.trace.readings.back().at;
        const CivilDate last = client_.review.input.zones.date_at(at);
        say(filled(words.last_reading, day_words(last, way()),
                   age_in_words(last, client_.today())));
        if (client_.today() - last > old_after) {
            tell_coach("The last reading is " +
                       age_words(at, client_.review.input.as_of, client_.review.input.zones) +
                       ": look at newer days before this page is given.");
        }
    }

    void lead() {
        std::vector<std::string> sentences = handout_lead(client_, words);
        const auto signs = type_signs(care_);
        if (!signs.empty() && !type_was_checked(care_, signs)) {
            if (const std::string see = type_signs_for_client(signs); !see.empty()) {
                sentences.push_back(see);
            }
        }
        if (!sentences.empty()) {
            add(PaperBox{words.read_first, std::move(sentences)});
        }
    }

    bool hours_may_be_told() const {
        return !made_.fewer_numbers && !client_.pregnant_or_may_be() &&
               !client_.review.trace.readings.empty();
    }

    // The coach's finding in the client's words, where it is a good thing.
    const Finding* hours_worth_telling() const {
        const auto found = std::ranges::find(client_.review.findings, "in_range", &Finding::code);
        const bool many = found != client_.review.findings.end() && found->estimate &&
                          found->estimate->value * 24 / 100 >= hours_to_praise;
        return many && !found->client_sentence.empty() ? &*found : nullptr;
    }

    bool wrote_on_most_days() const {
        std::set<CivilDate> days;
        for (const DiaryEntry& entry : client_.review.input.diary) {
            days.insert(client_.review.input.zones.date_at(entry.at));
        }
        return !client_.review.days.empty() && 2 * days.size() > client_.review.days.size();
    }

    void good_thing() {
        add(PaperHeading{words.good_thing});
        const FirstReview& review = client_.review;
        const Finding* hours = hours_may_be_told() ? hours_worth_telling() : nullptr;
        if (hours != nullptr && with_hours_) {
            told_hours_ = true;
            say(hours->client_sentence);
        } else if (const ReviewDay* best = day_with_most_in_range(review);
                   hours_may_be_told() && best != nullptr) {
            say(filled(words.best_day, day_words(best->day.date, way())));
        } else if (wrote_on_most_days()) {
            say(words.wrote);
        } else if (review.fitness.active_percent() >= 70) {
            say(words.wore);
        } else {
            say(words.came);
        }
    }

    void picture() {
        const bool hours = !made_.fewer_numbers && !client_.review.trace.readings.empty();
        made_.picture = hours ? HandoutPicture::hours_bar : HandoutPicture::day_to_mark;
        if (!hours && client_.pregnant_or_may_be()) {
            return;  // no plan of ours to mark
        }
        add(PaperFigure{0});
        say(hours ? words.bar : words.mark_your_day);
    }

    void change() {
        add(PaperHeading{words.change});
        const auto& agreed = client_.facts.agreed_change;
        if (client_.pregnant_or_may_be()) {
            say(words.clinic_leads);
        } else if (!agreed || agreed->outcome != ChangeOutcome::open) {
            add(RoomToWrite{words.no_change, 2});
        } else if (made_.fewer_numbers && speaks_of_eating_less(*agreed)) {
            say(words.talk_first);
            tell_coach(
                "The change agreed speaks of food, amounts or weight: it is left off while the "
                "eating screen is positive or open.");
        } else if (const auto gates = gates_before_printing(*agreed, client_.care());
                   !gates.empty()) {
            say(words.change_waits);
            tell_coach(
                "The change agreed is left off this page until this is settled; a letter "
                "to the prescriber asks for it:");
            for (std::string& line : gates_for_coach(gates, client_.licence)) {
                tell_coach(std::move(line));
            }
        } else {
            told_change(*agreed);
        }
    }

    static std::string all_words(const AgreedChange& change) {
        return change.words + "; " + change.when + "; " + change.where + "; " + change.how_often +
               "; " + change.if_not + "; " + change.how_checked + "; " + change.stop_when;
    }

    static bool speaks_of_eating_less(const AgreedChange& change) {
        DiaryEntry entry;
        entry.text = all_words(change);
        const bool may_be = asks_what_it_does(change) ? change.does.eating != EatingChange::nothing
                                                      : change.kind != Proposed::walking &&
                                                            change.kind != Proposed::other;
        return may_be || limits_eating(all_words(change)) ||
               speaks_of(entry, {"calorie", "kcal", "carb", "gram", "weight", "weigh", " kg", " lb",
                                 "pound", "portion", "fast for", "fasting", "skip", "eat less",
                                 "smaller", "in range", "glucose"});
    }

    void told_change(const AgreedChange& change) {
        std::vector<std::string> lines{words.what + change.words};
        const auto also = [&](const char* label, const std::string& told) {
            if (!told.empty()) {
                lines.push_back(label + told);
            }
        };
        also(words.when, change.when);
        also(words.where, change.where);
        also(words.how_often, change.how_often);
        also(words.if_not, change.if_not);
        also(words.stop_when, change.stop_when);
        also(words.how_checked, change.how_checked);
        if (change.when.empty() || change.how_often.empty() || change.how_checked.empty()) {
            tell_coach(
                "The change has no words yet for when, how often or how it is checked: agree "
                "them, so that the page can say them.");
        }
        add(PaperList{std::move(lines)});
        say(change.check_on ? filled(words.check_on, day_words(*change.check_on, way()))
                            : words.check_next);
    }

    void whom_to_call() {
        std::vector<std::string> lines{words.call_now};
        const std::string sick_day = sick_day_line(care_);
        if (!sick_day.empty()) {
            lines.emplace_back(words.call_now_ketones);
        }
        lines.emplace_back(words.call_today);
        if (!sick_day.empty()) {
            lines.push_back(sick_day);
        }
        lines.emplace_back(words.local_first);
        add(PaperBox{words.call, std::move(lines)});
        const Contact* clinic = clinic_of(client_.facts);
        add(contact_line(clinic == nullptr || clinic->name.empty()
                             ? std::string(words.clinic)
                             : words.clinic + (", " + clinic->name),
                         clinic));
        if (auto box = first_aid_box(risks_)) {
            add(std::move(*box));
        }
    }

    void judge() {
        for (const std::string& who : contacts_without_number(made_.paper)) {
            tell_coach("No telephone number is known (" + who +
                       "): a blank line is printed. Please ask for it.");
        }
        if (made_.fewer_numbers || numbers_turned_on_) {
            tell_coach(eating_for_coach(care_));
        }
        made_.numbers = numbers_in_message(made_.paper);
        if (made_.numbers > most_numbers) {
            tell_coach(
                fmt::format("The page tells {} numbers, more than {}: say the change in "
                            "fewer.",
                            made_.numbers, most_numbers));
        }
        const std::vector<std::string> message = message_of(made_.paper);
        if (std::ranges::any_of(message,
                                [](const std::string& text) { return percent_or_decimal(text); })) {
            tell_coach("The change's words hold a percent or a decimal: say it in whole things.");
        }
        made_.grade = reading_grade(counts_of(running_text(made_.paper))).value_or(0);
        if (made_.grade > highest_grade) {
            tell_coach(
                fmt::format("The page reads at school grade {:.1f}, above {:.0f}: say the "
                            "change in shorter words.",
                            made_.grade, highest_grade));
        }
    }

    const PaperClient& client_;
    CareInput care_;
    MedicineRisks risks_;
    bool with_hours_ = true;
    bool numbers_turned_on_ = false;
    bool told_hours_ = false;
    Handout made_;
};

}  // namespace

Handout handout(const PaperClient& client, const HandoutWishes& wishes) {
    Writer writer(client, wishes, true);
    Handout made = writer.write();
    if (made.numbers > most_numbers && writer.told_hours()) {
        return Writer(client, wishes, false).write();
    }
    return made;
}

}  // namespace tracewright

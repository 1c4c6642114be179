#include "coaching/shared_page.hpp"

#include "coaching/amounts_in_text.hpp"
#include "coaching/eating_care.hpp"
#include "coaching/numbers_in_text.hpp"
#include "coaching/paper_client.hpp"
#include "coaching/paper_parts.hpp"
#include "coaching/prescriber_letter.hpp"
#include "coaching/weight.hpp"
#include "findings/review_findings.hpp"
#include "findings/since_words.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

struct Shown {
    const SharedRecord& record;
    const Share& share;
    Paper& paper;

    void say(std::string text, bool strong = false) {
        paper.blocks.emplace_back(PaperSentence{std::move(text), strong});
    }
    void list(std::vector<std::string> items, const char* none) {
        if (items.empty()) {
            say(none);
        } else {
            paper.blocks.emplace_back(PaperList{std::move(items)});
        }
    }
    WayOfWriting way() const { return record.input.zones.writing(); }
    std::string at(Instant when) const {
        return day_and_time(record.input.zones.wall_time(when), way());
    }
};

const Finding* finding_of(const FirstReview& review, std::string_view code) {
    const auto found = std::ranges::find(review.findings, code, &Finding::code);
    return found == review.findings.end() ? nullptr : &*found;
}

void add_last_reading(Shown& shown) {
    const auto& last = shown.record.last_reading;
    if (!last) {
        shown.say("There is no reading: nothing can be said.", true);
    } else if (const auto age = shown.record.input.as_of - *last; age < std::chrono::seconds{0}) {
        shown.say("The last reading was " + shown.at(*last) +
                      ", after the time this was made: check the clocks.",
                  true);
    } else {
        shown.say(fmt::format("The last reading was {}, {}. {}", shown.at(*last),
                              age_words(*last, shown.record.input.as_of, shown.record.input.zones),
                              since_words(age)),
                  true);
    }
}

void add_hours(Shown& shown, const FirstReview& review, bool with_bar) {
    const Finding* finding = finding_of(review, "in_range");
    if (finding == nullptr || review.trace.readings.empty()) {
        shown.say("No hour of these days was seen: hours in range can't be told.");
        return;
    }
    shown.say(finding->client_sentence.empty() ? finding->sentence : finding->client_sentence);
    shown.say(fmt::format("{} of {} days were seen.", hours_and_minutes(review.fitness.sensed),
                          review.fitness.days));
    if (with_bar) {
        shown.paper.blocks.emplace_back(PaperFigure{0});
    }
}

std::string low_line(const Shown& shown, const Episode& low) {
    const GlucoseUnit unit = shown.record.input.unit;
    return fmt::format("{}, {}, lowest {}{}{}", shown.at(low.from), hours_and_minutes(low.lasted),
                       low.extreme.limit() == Limit::below ? "below " : "",
                       glucose_words(low.extreme.value().in(unit), unit),
                       low.end_not_seen ? ", end not seen" : "");
}

// Very low leads (safety rule 2). The sentences of the files alone: they tell no medicine and
// nobody's answer, which were not given with this.
void add_lows(Shown& shown, const FirstReview& review) {
    if (const Finding* very_low = finding_of(review, "very_low")) {
        shown.say(very_low->sentence, true);
    }
    if (const Finding* lows = finding_of(review, "lows")) {
        shown.say(lows->sentence);
    }
    std::vector<std::string> lines;
    for (const Episode& episode : review.episodes) {
        if (episode.kind == EpisodeKind::low) {
            lines.push_back(low_line(shown, episode));
        }
    }
    if (!lines.empty()) {
        shown.list(std::move(lines), "");
    }
}

void add_sheets(Shown& shown, const FirstReview& review, std::size_t first_figure) {
    for (const ReviewDay& day : review.days) {
        shown.say(full_date(day.day.date, shown.way()) + ": " + day.sentence);
        shown.paper.blocks.emplace_back(PaperFigure{first_figure++});
    }
    if (review.days.empty()) {
        shown.say("No day of these was seen.");
    }
}

bool has_digit(std::string_view text) {
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

// What is told under a kind of its own, or not at all, stands in no free text either: amounts of a
// meal, energy and weight anywhere. While the eating screen is positive or open a bare number of a
// mood or a note may be one of these ("only 800 today").
const char* held_back_words(const Shown& shown, const DiaryEntry& entry) {
    const bool may_be_an_amount =
        (entry.kind == DiaryKind::mood || entry.kind == DiaryKind::note) &&
        numbers_turned_down(shown.record.facts.cautions.eating);
    if (entry.kind == DiaryKind::meal) {
        return has_digit(entry.text) || tells_amounts(entry.text)
                   ? "written with amounts, which are not shown"
                   : nullptr;
    }
    return tells_amounts(entry.text) || (may_be_an_amount && numbers_in(entry.text) > 0)
               ? "written with numbers, which are not shown"
               : nullptr;
}

std::vector<std::string> entries(const Shown& shown, std::initializer_list<DiaryKind> kinds) {
    std::vector<std::string> lines;
    for (const DiaryEntry& entry : shown.record.input.diary) {
        if (std::ranges::find(kinds, entry.kind) == kinds.end()) {
            continue;
        }
        std::string line = day_and_time(entry.written, shown.way()) + ", " + name_of(entry.kind);
        if (const char* held_back = held_back_words(shown, entry)) {
            line += std::string(": ") + held_back;
        } else if (!entry.text.empty()) {
            line += ": " + entry.text;
        }
        if (entry.kind == DiaryKind::mood && entry.number) {
            line += fmt::format(" {:g} {}", *entry.number, entry.number_unit);
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> amounts(const Shown& shown) {
    std::vector<std::string> lines;
    for (const DiaryEntry& entry : shown.record.input.diary) {
        if (entry.kind != DiaryKind::meal ||
            !(entry.carbohydrate_g || entry.energy_kcal || entry.portion)) {
            continue;
        }
        std::string line = day_and_time(entry.written, shown.way());
        if (entry.portion) {
            line += ", " + *entry.portion;
        }
        if (entry.carbohydrate_g) {
            line += fmt::format(", {}{:g} g carbohydrate",
                                entry.carbohydrate_g->estimated ? "about " : "",
                                entry.carbohydrate_g->value);
        }
        if (entry.energy_kcal) {
            line += fmt::format(", {:g} kcal", *entry.energy_kcal);
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> weights(const Shown& shown) {
    const ReviewInput& input = shown.record.input;
    const CivilDate first = input.zones.date_at(input.as_of - shown.share.window);
    std::vector<std::string> lines;
    for (const Weight& weight : weights_of(shown.record.facts.labs)) {
        if (first <= weight.on && weight.on <= input.zones.date_at(input.as_of)) {
            lines.push_back(
                fmt::format("{}: {:.1f} kg", full_date(weight.on, shown.way()), weight.kg));
        }
    }
    return lines;
}

void add_medicines(Shown& shown) {
    const ClientFacts& facts = shown.record.facts;
    const ReviewInput& input = shown.record.input;
    if (!facts.medicines_asked_on) {
        shown.say(
            "Medicines were not asked about yet. Until then they count as able to cause lows.");
        return;
    }
    shown.say("As the client told them, asked on " +
              full_date(*facts.medicines_asked_on, shown.way()) + ".");
    const CivilDate first = input.zones.date_at(input.as_of - shown.share.window);
    std::vector<std::string> lines;
    for (const MedicineLine& line : facts.medicines) {
        if (line.until && *line.until < first) {
            continue;
        }
        lines.push_back(line.written +
                        (line.from ? ", since " + full_date(*line.from, shown.way()) : "") +
                        (line.until ? ", until " + full_date(*line.until, shown.way()) : ""));
    }
    shown.list(std::move(lines), "The client told of none.");
}

void add_letter(Shown& shown) {
    const SharedRecord& record = shown.record;
    const FirstReview review =
        client_review({record.input, record.name, record.facts, record.escalations});
    const PaperClient client(review, record.facts, record.escalations, record.coach,
                             record.licence);
    const Paper letter = prescriber_letter(client, {}, {record.input.wears, record.input.diary});
    shown.paper.blocks.insert(shown.paper.blocks.end(), letter.blocks.begin(), letter.blocks.end());
}

const char* heading_of(SharedKind kind) {
    switch (kind) {
        case SharedKind::hours_in_range:
            return "Hours in range";
        case SharedKind::lows:
            return "Lows";
        case SharedKind::day_sheets:
            return "Day by day";
        case SharedKind::diary:
            return "Ate, moved, slept";
        case SharedKind::food_amounts:
            return "Amounts eaten";
        case SharedKind::meal_photos:
            return "Photos of meals";
        case SharedKind::mood:
            return "Felt";
        case SharedKind::notes:
            return "Notes in the diary";
        case SharedKind::weight:
            return "Weight";
        case SharedKind::medicines:
            return "Medicines";
        case SharedKind::letter:
            return "Letter to the prescriber";
    }
    return "";
}

void add_kind(Shown& shown, SharedKind kind, const FirstReview& review, const SharedPage& page) {
    constexpr const char* none_written = "Nothing was written in these days.";
    switch (kind) {
        case SharedKind::hours_in_range:
            return add_hours(shown, review, page.hours.has_value());
        case SharedKind::lows:
            return add_lows(shown, review);
        case SharedKind::day_sheets:
            return add_sheets(shown, *page.sheets, page.hours ? 1 : 0);
        case SharedKind::diary:
            return shown.list(
                entries(shown, {DiaryKind::meal, DiaryKind::movement, DiaryKind::sleep}),
                none_written);
        case SharedKind::food_amounts:
            return shown.list(amounts(shown), "No amount was written in these days.");
        case SharedKind::meal_photos:
            return shown.say("Photos of meals are not shown on this page.");
        case SharedKind::mood:
            return shown.list(entries(shown, {DiaryKind::mood}), none_written);
        case SharedKind::notes:
            return shown.list(entries(shown, {DiaryKind::note}), none_written);
        case SharedKind::weight:
            return shown.list(weights(shown), "No weight was told in these days.");
        case SharedKind::medicines:
            return add_medicines(shown);
        case SharedKind::letter:
            return add_letter(shown);
    }
}

void begin(Shown& shown, bool dated) {
    const ReviewInput& input = shown.record.input;
    const auto day = [&](Instant at) { return full_date(input.zones.date_at(at), shown.way()); };
    shown.paper.title = "For " + shown.share.recipient;
    shown.paper.made = made_at(input.as_of);
    shown.paper.one_page = false;
    add_last_reading(shown);
    shown.say("Not an alarm. Don't rely on this page to be woken or warned.", true);
    shown.say(fmt::format("The last {} days, for: {}. ", shown.share.window.count(),
                          shown.share.purpose) +
              (dated ? "Made on " + day(input.as_of) +
                           ". It is a copy: it can't be taken back, and all it says is as of then."
                     : "It closes after " + day(shown.share.until - std::chrono::seconds{1}) +
                           ", or before, when the client wants it to."));
}

}  // namespace

SharedPage shared_page(const SharedRecord& record, const Share& share, const SharedKinds& open,
                       bool dated) {
    SharedPage page;
    Shown shown{record, share, page.paper};
    begin(shown, dated);
    FirstReview review = first_review(record.input);
    if (open.has(SharedKind::day_sheets)) {
        ReviewInput bare = record.input;
        bare.foods_left_off = true;
        bare.diary.clear();
        page.sheets = first_review(std::move(bare));
    }
    // The bar has the low hours in it.
    if (open.has(SharedKind::hours_in_range) && open.has(SharedKind::lows) &&
        !review.trace.readings.empty()) {
        page.hours = first_review(record.input);
    }
    for (const SharedKind kind : every_shared_kind) {
        if (open.has(kind)) {
            page.paper.blocks.emplace_back(PaperHeading{heading_of(kind)});
            add_kind(shown, kind, review, page);
        }
    }
    std::vector<std::string> others = cautions();
    std::erase_if(others,
                  [](const std::string& caution) { return caution.starts_with("Not an alarm"); });
    page.paper.blocks.emplace_back(PaperBox{"Cautions", std::move(others)});
    return page;
}

}  // namespace tracewright

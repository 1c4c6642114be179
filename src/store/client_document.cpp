#include "store/client_document.hpp"

#include "coaching/a1c_results.hpp"
#include "store/document_reader.hpp"
#include "time/zone_history.hpp"

#include <date/date.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <array>

namespace tracewright {

namespace {

using Json = nlohmann::ordered_json;

// Words of an enumeration, in the order of its values.
constexpr std::array<const char*, 3> answers{"not asked", "no", "yes"};
constexpr std::array<const char*, 5> pregnancies{"not asked", "no", "pregnant", "planning",
                                                 "unsure"};
constexpr std::array<const char*, 4> contact_kinds{"emergency", "prescriber", "clinic", "other"};
constexpr std::array<const char*, 5> asked_about{"low carbohydrate", "fasting", "weight loss",
                                                 "walking", "diabetes type"};
constexpr std::array<const char*, 2> units{"mg/dL", "mmol/L"};
constexpr std::array<const char*, 4> goal_kinds{"adults", "older", "own", "pregnancy"};
constexpr std::array<const char*, 7> proposed{
    "low carbohydrate", "fasting", "meal skipping", "weight loss",
    "food change",      "walking", "other"};
constexpr std::array<const char*, 4> eating_changes{"not asked", "nothing", "as much", "less"};
constexpr std::array<const char*, 4> change_outcomes{"open", "kept", "dropped", "changed"};

constexpr int most_bought = 10'000;  // beyond it is a slip of the keys

Json text_of(const std::optional<CivilDate>& day) {
    return day ? Json(date::format("%F", date::local_days{date::days{
                                             static_cast<int>(day->time_since_epoch().count())}}))
               : Json();
}

template <typename Value>
Json value_of(const std::optional<Value>& value) {
    return value ? Json(*value) : Json();
}

template <typename Enumeration, std::size_t Count>
Json word_of(const std::array<const char*, Count>& words, Enumeration value) {
    return words[static_cast<std::size_t>(value)];
}

struct CautionKey {
    const char* key;
    Answered Cautions::*answer;
};
constexpr std::array caution_keys{
    CautionKey{"severe_low_before", &Cautions::severe_low_before},
    CautionKey{"kidney_disease", &Cautions::kidney_disease},
    CautionKey{"liver_disease", &Cautions::liver_disease},
    CautionKey{"heart_disease", &Cautions::heart_disease},
    CautionKey{"chest_symptoms", &Cautions::chest_symptoms},
    CautionKey{"eye_disease", &Cautions::eye_disease},
    CautionKey{"numb_feet_or_wound", &Cautions::numb_feet_or_wound},
    CautionKey{"stomach_surgery", &Cautions::stomach_surgery},
    CautionKey{"frail", &Cautions::frail},
    CautionKey{"another_autoimmune_disease", &Cautions::another_autoimmune_disease},
};

void put_cautions(Json& document, const Cautions& cautions) {
    document["pregnancy"] = word_of(pregnancies, cautions.pregnancy);
    document["eating_screen"] = Json{{"asked_on", text_of(cautions.eating.asked_on)},
                                     {"by", cautions.eating.by},
                                     {"positive", word_of(answers, cautions.eating.positive)}};
    for (const CautionKey& caution : caution_keys) {
        document[caution.key] = word_of(answers, cautions.*caution.answer);
    }
    document["last_eye_check"] = text_of(cautions.last_eye_check);
    document["others"] = cautions.others;
}

void read_cautions(DocumentReader& reader, Cautions& cautions) {
    reader.word("pregnancy", pregnancies, cautions.pregnancy);
    reader.object("eating_screen", [&](DocumentReader& screen) {
        screen.date("asked_on", cautions.eating.asked_on);
        screen.text("by", cautions.eating.by);
        screen.word("positive", answers, cautions.eating.positive);
    });
    for (const CautionKey& caution : caution_keys) {
        reader.word(caution.key, answers, cautions.*caution.answer);
    }
    reader.date("last_eye_check", cautions.last_eye_check);
    reader.text("others", cautions.others);
}

void put_goals(Json& document, const ClientFacts& facts) {
    document["kind"] = word_of(goal_kinds, facts.goals.kind);
    document["in_range_above"] = value_of(facts.goals.in_range_above);
    document["below_range_below"] = value_of(facts.goals.below_range_below);
    document["very_low_below"] = value_of(facts.goals.very_low_below);
    document["above_range_below"] = value_of(facts.goals.above_range_below);
    document["very_high_below"] = value_of(facts.goals.very_high_below);
    document["agreed_with"] = facts.goals_agreed_with;
    document["agreed_on"] = text_of(facts.goals_agreed_on);
}

// Of the client's own: shares of a day, and none of lows looser than for adults by consensus (ours,
// no source: what is safe is not agreed away).
void check_own(const Goals& own) {
    const auto within = [](const char* key, const std::optional<double>& share, double most) {
        if (share && (*share <= 0 || *share > most)) {
            unreadable(std::string("goals.") + key,
                       fmt::format("a percentage over 0 and up to {:g}", most));
        }
    };
    const Goals adults = consensus_goals(GoalKind::adults);
    within("in_range_above", own.in_range_above, 99);
    within("below_range_below", own.below_range_below, *adults.below_range_below);
    within("very_low_below", own.very_low_below, *adults.very_low_below);
    within("above_range_below", own.above_range_below, 100);
    within("very_high_below", own.very_high_below, own.above_range_below.value_or(100));
}

// Numbers go with the client's own goals alone: those of a consensus are its own.
void read_goals(DocumentReader& reader, ClientFacts& facts) {
    reader.word("kind", goal_kinds, facts.goals.kind);
    Goals numbers{facts.goals.kind, {}, {}, {}, {}, {}};
    reader.number("in_range_above", numbers.in_range_above);
    reader.number("below_range_below", numbers.below_range_below);
    reader.number("very_low_below", numbers.very_low_below);
    reader.number("above_range_below", numbers.above_range_below);
    reader.number("very_high_below", numbers.very_high_below);
    facts.goals = numbers.kind == GoalKind::own ? numbers : consensus_goals(numbers.kind);
    reader.text("agreed_with", facts.goals_agreed_with);
    reader.date("agreed_on", facts.goals_agreed_on);
}

void put_lists(Json& document, const ClientFacts& facts) {
    document["zones"] = Json::array();
    for (const ZoneSince& since : facts.zones) {
        document["zones"].push_back(
            {{"zone", since.zone},
             {"from", since.from
                          ? Json(date::format("%FT%R", date::local_seconds{std::chrono::seconds{
                                                           since.from->time_since_epoch()}}))
                          : Json()}});
    }
    document["contacts"] = Json::array();
    for (const Contact& contact : facts.contacts) {
        document["contacts"].push_back({{"kind", word_of(contact_kinds, contact.kind)},
                                        {"name", contact.name},
                                        {"telephone", contact.telephone}});
    }
    document["medicines_asked_on"] = text_of(facts.medicines_asked_on);
    document["medicines"] = Json::array();
    for (const MedicineLine& line : facts.medicines) {
        document["medicines"].push_back({{"written", line.written},
                                         {"from", text_of(line.from)},
                                         {"until", text_of(line.until)}});
    }
    document["prescriber_answers"] = Json::array();
    for (const PrescriberAnswer& answer : facts.prescriber_answers) {
        document["prescriber_answers"].push_back({{"about", word_of(asked_about, answer.about)},
                                                  {"agreed", answer.agreed},
                                                  {"by", answer.by},
                                                  {"on", text_of(answer.on)},
                                                  {"valid_until", text_of(answer.valid_until)}});
    }
    document["labs"] = Json::array();
    for (const LabResult& lab : facts.labs) {
        document["labs"].push_back({{"on", text_of(lab.on)},
                                    {"what", lab.what},
                                    {"value", lab.value},
                                    {"unit", lab.unit}});
    }
}

// Who, when and about what: an answer that leaves one of them out answers nothing.
void read_prescriber_answer(DocumentReader& item, ClientFacts& facts) {
    PrescriberAnswer& answer = facts.prescriber_answers.emplace_back();
    for (const char* key : {"about", "by", "on"}) {
        if (item.at(key) == nullptr) {
            unreadable(item.path(key), "who answered, on which day and about what");
        }
    }
    item.word("about", asked_about, answer.about);
    item.truth("agreed", answer.agreed);
    item.text("by", answer.by);
    item.date("on", answer.on);
    item.date("valid_until", answer.valid_until);
}

// Each change comes after the one before by the clock that was left, or the clock would pass over
// it.
void check_zones(const ClientFacts& facts) {
    std::optional<ZoneHistory> clock;
    std::optional<Instant> before;
    for (std::size_t i = 0; i < facts.zones.size(); ++i) {
        const Zone zone = *Zone::named(facts.zones[i].zone);
        if (!clock) {
            clock.emplace(zone);
            continue;
        }
        const Instant from = clock->resolve(*facts.zones[i].from).first;
        if (before && from <= *before) {
            unreadable(fmt::format("zones[{}].from", i + 1),
                       "a time after the change before it, by the clock that was left");
        }
        clock->change(from, zone);
        before = from;
    }
}

void read_medicine(DocumentReader& item, ClientFacts& facts) {
    MedicineLine& line = facts.medicines.emplace_back();
    item.text("written", line.written);
    item.date("from", line.from);
    item.date("until", line.until);
    if (item.told() && line.from && line.until && *line.until < *line.from) {
        unreadable(item.path("until"), "null or a day not before 'from'");
    }
}

void read_lab(DocumentReader& item, ClientFacts& facts) {
    LabResult& lab = facts.labs.emplace_back();
    item.date("on", lab.on);
    item.text("what", lab.what);
    item.number("value", lab.value);
    item.text("unit", lab.unit);
    if (!item.told()) {
        return;
    }
    for (const char* key : {"on", "what", "value", "unit"}) {
        const Json* found = item.at(key);
        if (found == nullptr || *found == "") {
            unreadable(item.path(key), "the day, what was measured, its value and its unit");
        }
    }
    if (lab.value <= 0) {
        unreadable(item.path("value"), "a number over 0");
    }
    if (is_a1c(lab.what) && a1c_results(std::span(&lab, 1)).empty()) {
        unreadable(item.path("value"), "an A1c of 3 to 20 %, or of 9 to 195 mmol/mol");
    }
}

void read_lists(DocumentReader& reader, ClientFacts& facts) {
    reader.list("zones", [&](DocumentReader& item) {
        ZoneSince& since = facts.zones.emplace_back();
        item.text("zone", since.zone);
        if (!Zone::named(since.zone)) {
            unreadable(item.path("zone"), "a time zone by IANA name, such as Europe/Berlin");
        }
        item.wall_time("from", since.from);
        const bool home = facts.zones.size() == 1;
        const bool ascends =
            home || (since.from && (facts.zones.size() == 2 ||
                                    *since.from > *facts.zones[facts.zones.size() - 2].from));
        if (home == since.from.has_value() || !ascends) {
            unreadable(item.path("from"), "null for the home zone, then one time after the other");
        }
    });
    if (reader.told()) {
        check_zones(facts);
    }
    reader.list("contacts", [&](DocumentReader& item) {
        Contact& contact = facts.contacts.emplace_back();
        item.word("kind", contact_kinds, contact.kind);
        item.text("name", contact.name);
        item.text("telephone", contact.telephone);
    });
    reader.date("medicines_asked_on", facts.medicines_asked_on);
    reader.list("medicines", [&](DocumentReader& item) { read_medicine(item, facts); });
    reader.list("prescriber_answers",
                [&](DocumentReader& item) { read_prescriber_answer(item, facts); });
    reader.list("labs", [&](DocumentReader& item) { read_lab(item, facts); });
}

Json supply_of(const Supply& supply) {
    return {{"bought", supply.bought}, {"used", supply.used}};
}

void read_supply(DocumentReader& reader, const char* key, Supply& supply) {
    reader.object(key, [&](DocumentReader& item) {
        item.number("bought", supply.bought, 0, most_bought);
        item.number("used", supply.used, 0, most_bought);
    });
}

void read_consent(DocumentReader& item, Consent& consent) {
    item.date("given_on", consent.given_on);
    item.text("what_is_kept", consent.what_is_kept);
    item.text("who_sees", consent.who_sees);
    item.date("until", consent.until);
    item.date("withdrawn_on", consent.withdrawn_on);
}

Json change_of(const AgreedChange& change) {
    return {{"words", change.words},
            {"agreed_on", text_of(change.agreed_on)},
            {"check_on", text_of(change.check_on)},
            {"when", change.when},
            {"where", change.where},
            {"how_often", change.how_often},
            {"if_not", change.if_not},
            {"how_checked", change.how_checked},
            {"check_days", value_of(change.check_days)},
            {"stop_when", change.stop_when},
            {"kind", word_of(proposed, change.kind)},
            {"candidate", change.candidate},
            {"eating", word_of(eating_changes, change.does.eating)},
            {"moves", word_of(answers, change.does.moves)},
            {"medicine", word_of(answers, change.does.medicine)},
            {"outcome", word_of(change_outcomes, change.outcome)},
            {"ended_on", text_of(change.ended_on)}};
}

// A document of an earlier program has words and days alone: all else stays untold.
void read_change(DocumentReader& item, AgreedChange& change) {
    item.text("words", change.words);
    item.date("agreed_on", change.agreed_on);
    item.date("check_on", change.check_on);
    item.text("when", change.when);
    item.text("where", change.where);
    item.text("how_often", change.how_often);
    item.text("if_not", change.if_not);
    item.text("how_checked", change.how_checked);
    item.number("check_days", change.check_days, 1, 366);
    item.text("stop_when", change.stop_when);
    item.word("kind", proposed, change.kind);
    item.text("candidate", change.candidate);
    item.word("eating", eating_changes, change.does.eating);
    item.word("moves", answers, change.does.moves);
    item.word("medicine", answers, change.does.medicine);
    item.word("outcome", change_outcomes, change.outcome);
    item.date("ended_on", change.ended_on);
}

void read_changes(DocumentReader& reader, ClientFacts& facts) {
    reader.object("agreed_change", [&](DocumentReader& item) {
        AgreedChange& change = facts.agreed_change.emplace();
        read_change(item, change);
        if (change.outcome != ChangeOutcome::open || change.ended_on) {
            unreadable(item.path("outcome"), "'open': what has ended is an earlier change");
        }
    });
    reader.list("earlier_changes", [&](DocumentReader& item) {
        AgreedChange& change = facts.earlier_changes.emplace_back();
        read_change(item, change);
        if (change.outcome == ChangeOutcome::open || !change.ended_on) {
            unreadable(item.path("outcome"), "'kept', 'dropped' or 'changed', with its 'ended_on'");
        }
    });
}

Json document_of(const ClientFacts& facts) {
    Json document;
    document["why_they_came"] = facts.why_they_came;
    document["born_year"] = value_of(facts.born_year);
    document["told_type"] = facts.told_type;
    document["diagnosed_on"] = text_of(facts.diagnosed_on);
    document["language"] = facts.language;
    document["unit"] = word_of(units, facts.unit);
    put_lists(document, facts);
    put_cautions(document["cautions"], facts.cautions);
    put_goals(document["goals"], facts);
    document["consent"] = {{"given_on", text_of(facts.consent.given_on)},
                           {"what_is_kept", facts.consent.what_is_kept},
                           {"who_sees", facts.consent.who_sees},
                           {"until", text_of(facts.consent.until)},
                           {"withdrawn_on", text_of(facts.consent.withdrawn_on)}};
    document["sessions"] = supply_of(facts.sessions);
    document["sensors"] = supply_of(facts.sensors);
    document["agreed_change"] = facts.agreed_change ? change_of(*facts.agreed_change) : Json();
    document["earlier_changes"] = Json::array();
    for (const AgreedChange& change : facts.earlier_changes) {
        document["earlier_changes"].push_back(change_of(change));
    }
    return document;
}

ClientFacts facts_of(const Json& document, Held held) {
    ClientFacts facts;
    DocumentReader reader(document, "", held);
    reader.text("why_they_came", facts.why_they_came);
    reader.number("born_year", facts.born_year, 1900, 2100);
    reader.text("told_type", facts.told_type);
    reader.date("diagnosed_on", facts.diagnosed_on);
    reader.text("language", facts.language);
    reader.word("unit", units, facts.unit);
    read_lists(reader, facts);
    reader.object("cautions", [&](DocumentReader& item) { read_cautions(item, facts.cautions); });
    reader.object("goals", [&](DocumentReader& item) { read_goals(item, facts); });
    reader.object("consent", [&](DocumentReader& item) { read_consent(item, facts.consent); });
    read_supply(reader, "sessions", facts.sessions);
    read_supply(reader, "sensors", facts.sensors);
    read_changes(reader, facts);
    reader.finish();
    return facts;
}

tl::expected<Json, std::string> json_object(std::string_view text) {
    Json document = Json::parse(text, nullptr, false);
    if (!document.is_object()) {
        return tl::make_unexpected(std::string(
            "found text that is no JSON object, expected an object of the client's facts"));
    }
    return document;
}

tl::expected<ClientFacts, std::string> facts_or_why_not(const Json& document) {
    try {
        return facts_of(document, Held::as_stored);
    } catch (const UnreadableDocument& error) {
        return tl::make_unexpected(std::string(error.what()));
    }
}

}  // namespace

std::string client_document(const ClientFacts& facts, int indent) {
    return document_of(facts).dump(indent, ' ', false, Json::error_handler_t::replace);
}

tl::expected<ClientFacts, std::string> client_facts_read(std::string_view document) {
    return json_object(document).and_then(facts_or_why_not);
}

tl::expected<ClientFacts, std::string> client_facts_changed(const ClientFacts& facts,
                                                            std::string_view patch) {
    const auto changes = json_object(patch);
    if (!changes) {
        return tl::make_unexpected(changes.error());
    }
    Json document = document_of(facts);
    document.merge_patch(*changes);
    try {
        // Held to bounds is what is told now: what was stored before is in no change's way.
        Json told = Json::object();
        for (const auto& [key, value] : changes->items()) {
            if (document.contains(key)) {
                told[key] = document[key];
            }
        }
        facts_of(told, Held::as_told);
        ClientFacts changed = facts_of(document, Held::as_stored);
        if (changed.goals.kind == GoalKind::own) {
            check_own(changed.goals);
        }
        changed.writing = facts.writing;
        return changed;
    } catch (const UnreadableDocument& error) {
        return tl::make_unexpected(std::string(error.what()));
    }
}

}  // namespace tracewright

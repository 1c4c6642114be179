#include "intake/column_title.hpp"

#include "intake/number_text.hpp"
#include "intake/plain_text.hpp"
#include "intake/sleep_title.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

// Words that name a role: whole words of the title, or (marked by a leading '*') any part of it, or
// (by '=') nothing beside it.
// In order: the first line with a word in the title decides.
struct Words {
    Role role;
    std::array<std::string_view, 30> words;
};

constexpr Words title_words[] = {
    {Role::finger_prick,
     {"*finger", "*capillar", "cbg", "smbg", "*kapillar", "*stick", "*\xE6\x8C\x87\xE5\xB0\x96",
      "*\xE6\x8C\x87\xE8\xA1\x80"}},
    {Role::ketones, {"*keton", "*ketone", "*cetona", "*c\xC3\xA9tone", "*\xE9\x85\xAE"}},
    {Role::lab, {"*hba1c", "a1c", "lab", "labor", "laboratory"}},
    {Role::unit,
     {"unit", "units", "einheit", "unit\xC3\xA9", "unidad", "\xE5\x8D\x95\xE4\xBD\x8D"}},
    {Role::slot, {"*meal type", "*mealtype", "*mahlzeitentyp", "slot", "*meal slot", "*mealslot"}},
    {Role::carbohydrate,
     {"*carb", "*kohlenhydrat", "kh", "*glucide", "*hidrato", "*\xE7\xA2\xB3\xE6\xB0\xB4", "be",
      "ke", "*exchange"}},
    {Role::fibre, {"*fibre", "*fiber", "*ballaststoff", "*fibra", "*\xE7\xBA\xA4\xE7\xBB\xB4"}},
    {Role::protein, {"*protein", "*eiwei", "prot", "*prot\xC3\xA9", "*prote"}},
    {Role::fat, {"fat", "fett", "*grasa", "*lipid", "fats"}},
    {Role::energy, {"*kcal", "*energ", "*calor", "kj", "*brennwert"}},
    {Role::portion, {"portion", "*menge", "amount", "cantidad", "quantit\xC3\xA9"}},
    {Role::steps, {"*steps", "*schritte", "pas", "pasos"}},
    {Role::minutes,
     {"*duration", "*dauer", "*minutes",
      "*dur\xC3\xA9"
      "e",
      "*minuten"}},
    {Role::movement_text,
     {"*activit", "*exercise", "*movement", "*sport", "*bewegung", "*walk", "*aktivit", "*moved",
      "*ejercicio"}},
    {Role::sensor_event, {"*sensor event", "*sensor change", "*sensorwechsel"}},
    {Role::mood, {"mood", "*stimmung", "*stress", "*humeur", "*felt", "*feeling", "estado"}},
    {Role::sleep_hours, {"*hours slept", "*sleep hours", "sleep", "slept", "schlaf", "sommeil"}},
    {Role::medicine,
     {"*medic", "*medik", "*insulin", "*drug", "*agent", "*tablet",
      "*m\xC3\xA9"
      "dicament",
      "took", "*hypoglyc", "*\xE8\x8D\xAF"}},
    {Role::dose, {"*dose", "dosis", "*bolus", "*basal"}},
    {Role::alcohol, {"*alcohol", "*alkohol"}},
    {Role::symptom, {"*symptom"}},
    {Role::illness, {"*illness", "*krank", "ill"}},
    {Role::meal_text,
     {"*meal", "*food", "*diet", "*mahlzeit", "essen", "*repas", "*comida", "ate", "eaten",
      "gegessen", "*\xE9\xA5\xAE\xE9\xA3\x9F", "*\xE8\x86\xB3\xE9\xA3\x9F"}},
    {Role::note,
     {"*note", "*notiz", "*comment", "*bemerkung", "*remark", "text", "text en", "*kommentar",
      "*nota", "*\xE5\xA4\x87\xE6\xB3\xA8", "*text"}},
    {Role::glucose,
     {"bg", "*glucose", "*glukose", "*glucosa", "cgm", "*blutzucker", "bz", "*glyc",
      "*\xE8\xA1\x80\xE7\xB3\x96", "*\xE8\x91\xA1\xE8\x90\x84\xE7\xB3\x96", "*glicemia",
      "*sensorwert"}},
    // A stamp of time is one whatever made it: before the words for devices.
    {Role::time,
     {"*zeitstempel", "*timestamp", "*time stamp", "*zeitpunkt", "*datetime", "*date time",
      "*horodat", "*fecha y hora", "*\xE6\x97\xB6\xE9\x97\xB4"}},
    {Role::person,
     {"person",
      "*patient",
      "*participant",
      "client",
      "clientid",
      "*klient",
      "subject",
      "subjectid",
      "*proband",
      "*teilnehmer",
      "user",
      "*userid",
      "*username",
      "*benutzer",
      "*person id",
      "*client id",
      "*subject id",
      "*nachname",
      "*vorname",
      "*familienname",
      "*surname",
      "*last name",
      "*lastname",
      "*first name",
      "*firstname",
      "full name",
      "*apellido",
      "*pr\xC3\xA9nom",
      "*\xE5\xA7\x93\xE5\x90\x8D",
      "*\xE6\x82\xA3\xE8\x80\x85"}},
    {Role::person, {"=id", "=name", "=nom", "=nombre", "=kennung", "=identifier", "=identifiant"}},
    {Role::device,
     {"device", "*deviceid", "*ger\xC3\xA4t", "*seriennummer", "*serial", "*sensor id", "*sensorid",
      "*sensor number", "*sensor nr", "*sensor no", "*sensornummer", "*transmitter id", "*appareil",
      "*dispositivo"}},
    {Role::kind, {"kind", "type", "art", "typ", "*record type", "category", "kategorie"}},
    {Role::value, {"value", "wert", "valeur", "valor", "result"}},
    {Role::time, {"time", "zeit", "ts", "when"}},
    {Role::date,
     {"date", "datum", "day", "fecha", "tag", "*\xE6\x97\xA5\xE6\x9C\x9F", "*calendar date",
      "*night of"}},
    {Role::clock, {"clock", "uhrzeit", "heure", "hora", "*time of day"}},
};

// Title as words with single blanks, without what stands in brackets.
std::string words_of(std::string_view title) {
    std::string result;
    int depth = 0;
    for (const char c : lower_case(plain(title))) {
        depth += c == '(' || c == '[' ? 1 : 0;
        const bool letter = depth == 0 && c != ')' && c != ']' &&
                            std::string_view("_-./:,;'\"\n\r\t").find(c) == std::string_view::npos;
        if (letter && !(c == ' ' && (result.empty() || result.back() == ' '))) {
            result += c;
        } else if (!letter && !result.empty() && result.back() != ' ') {
            result += ' ';
        }
        depth -= c == ')' || c == ']' ? 1 : 0;
    }
    while (result.ends_with(' ')) {
        result.pop_back();
    }
    return result;
}

bool has_word(const std::string& title, std::string_view word) {
    if (word.starts_with('*')) {
        return title.find(word.substr(1)) != std::string::npos;
    }
    if (word.starts_with('=')) {
        return title == word.substr(1);
    }
    return has_whole_word(title, word);
}

bool has_any(const std::string& title, const Words& line) {
    return std::any_of(line.words.begin(), line.words.end(), [&](std::string_view word) {
        return !word.empty() && has_word(title, word);
    });
}

bool has_part(const std::string& title, std::initializer_list<std::string_view> parts) {
    return std::any_of(parts.begin(), parts.end(), [&](std::string_view part) {
        return title.find(part) != std::string::npos;
    });
}

double minutes_per_unit(const std::string& title, std::string_view whole) {
    const std::string lower = lower_case(whole);
    if (has_word(title, "s") || has_word(title, "sec") || has_word(title, "seconds") ||
        lower.find("(s)") != std::string::npos) {
        return 1.0 / 60;
    }
    if (has_word(title, "h") || has_word(title, "hours") ||
        lower.find("(h)") != std::string::npos) {
        return 60;
    }
    return 1;
}

// Titles that bear a time word beside what the time is of ("start_local", "end time").
std::optional<Role> time_role(const std::string& title) {
    const bool end = has_part(title, {"end", "ende", "finish"});
    const bool start = has_part(title, {"start", "begin", "onset", "beginn"});
    const bool of_time = has_word(title, "local") || has_word(title, "time") ||
                         has_word(title, "ts") || has_word(title, "zeit") || title == "start" ||
                         title == "end" || title == "begin";
    if (!(start || end) || !of_time) {
        return std::nullopt;
    }
    return end ? Role::end_time : Role::time;
}

bool names_an_offset(const std::string& title) {
    return has_word(title, "tz") ||
           has_part(title,
                    {"utcoffset", "utc offset", "gmt offset", "time offset", "tz offset",
                     "offset utc", "utc versatz", "zeitverschiebung", "timezone", "time zone",
                     "zeitzone", "fuseau", "zona horaria", "\xE6\x97\xB6\xE5\x8C\xBA"});
}

// The first line of words that has one in the title.
Role worded_role(const std::string& title) {
    const auto line = std::ranges::find_if(
        title_words, [&](const Words& candidate) { return has_any(title, candidate); });
    return line == std::end(title_words) ? Role::ignored : line->role;
}

// "Bedtime glucose" is glucose, and a "bedtime snack" a meal.
std::optional<Role> role_in_sleep(const std::string& title) {
    const Role worded = worded_role(title);
    const bool free = worded == Role::ignored || worded == Role::time || worded == Role::date ||
                      worded == Role::clock || worded == Role::sleep_hours;
    const EndOfSleep end = free ? end_of_sleep(title) : EndOfSleep::none;
    if (end == EndOfSleep::none || titled_meal(title)) {
        return std::nullopt;
    }
    return end == EndOfSleep::start ? Role::sleep_start : Role::sleep_end;
}

Role role_in(const std::string& words) {
    // A time word wins only where nothing else is named: "carbohydrate time" is no time of ours,
    // but "meal_ts" is one.
    const auto of_time = time_role(words);
    if (has_word(words, "ts") || has_word(words, "timestamp") || words.ends_with(" time")) {
        return of_time.value_or(Role::time);
    }
    if (of_time) {
        return *of_time;
    }
    return worded_role(words);
}

}  // namespace

const char* name_of(Role role) {
    constexpr std::array names{
        "ignored",   "time",        "date",      "clock",        "end time",     "sleep start",
        "sleep end", "meal time",   "glucose",   "finger-prick", "ketones",      "unit",
        "kind",      "value",       "meal text", "slot",         "carbohydrate", "fibre",
        "protein",   "fat",         "energy",    "portion",      "movement",     "minutes",
        "steps",     "hours slept", "mood",      "medicine",     "dose",         "lab",
        "alcohol",   "illness",     "symptom",   "sensor event", "note",         "person",
        "device",    "offset"};
    return names.at(static_cast<std::size_t>(role));
}

TitleMeaning title_meaning(std::string_view title) {
    const std::string words = words_of(title);
    TitleMeaning meaning;
    meaning.unit = unit_named(title);
    meaning.minutes_per_unit = minutes_per_unit(words, title);
    if (words.empty()) {
        return meaning;
    }
    if (names_an_offset(words)) {
        meaning.role = Role::offset;
        return meaning;
    }
    meaning.offset = offset_in_title(title);
    if (has_word(words, "utc") || has_word(words, "offset")) {
        return meaning;
    }
    if (const auto role = role_in_sleep(words)) {
        meaning.role = *role;
        return meaning;
    }
    meaning.role = role_in(words);
    meaning.meal = titled_meal(words);
    if (meaning.meal && meaning.meal->of_time && meaning.meal->alone) {
        meaning.role = Role::meal_time;
    }
    meaning.exchanges =
        meaning.role == Role::carbohydrate &&
        (has_word(words, "be") || has_word(words, "ke") || has_part(words, {"exchange"}));
    return meaning;
}

bool names_sensed_glucose(std::string_view title) {
    const std::string words = words_of(title);
    return has_word(words, "cgm") || has_word(words, "fgm") || has_word(words, "isf") ||
           has_part(words, {"sensor", "interstiti", "continuous", "kontinuierlich", "gewebe",
                            "en continu", "\xE4\xBC\xA0\xE6\x84\x9F"});
}

bool names_blood_glucose(std::string_view title) {
    const std::string words = words_of(title);
    return names_a_meter(title) ||
           (!names_sensed_glucose(title) &&
            (has_word(words, "bg") || has_word(words, "bz") ||
             has_part(words, {"blood", "blut", "glyc\xC3\xA9mie", "glucemia", "glicemia",
                              "\xE8\xA1\x80\xE7\xB3\x96"})));
}

bool names_a_meter(std::string_view title) {
    const std::string words = words_of(title);
    return !names_sensed_glucose(title) &&
           (has_word(words, "meter") ||
            has_part(words, {"strip", "streifen", "finger", "prick", "capillar", "kapillar",
                             "glucometer", "messger\xC3\xA4t"}));
}

bool names_a_sensor(std::string_view title) {
    return has_part(words_of(title), {"sensor", "serial", "serien"});
}

bool may_number_rows(std::string_view title) {
    constexpr std::array says_little{"id",      "name",       "nom",        "nombre",
                                     "kennung", "identifier", "identifiant"};
    return std::find(says_little.begin(), says_little.end(), words_of(title)) != says_little.end();
}

bool names_a_medicine(std::string_view title) {
    constexpr std::array says_nothing{
        "dose",      "doses",      "dosis",       "dosage",     "amount",      "number", "unit",
        "units",     "iu",         "ie",          "u",          "mg",          "g",      "medicine",
        "medicines", "medication", "medications", "medikament", "medikamente", "drug",   "drugs",
        "tablet",    "tablets",    "agent",       "agents",     "took",        "taken",  "of"};
    const std::string words = words_of(title) + " ";
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = words.find(' ', at);
        const std::string word = words.substr(at, end - at);
        if (!word.empty() &&
            std::find(says_nothing.begin(), says_nothing.end(), word) == says_nothing.end()) {
            return true;
        }
        at = end + 1;
    }
    return false;
}

std::optional<KindMeaning> kind_meaning(std::string_view kind) {
    const std::string words = words_of(kind);
    KindMeaning meaning;
    meaning.unit = unit_named(kind);
    const auto is = [&](std::initializer_list<std::string_view> parts) {
        return has_part(words, parts);
    };
    if (is({"finger", "prick", "capillar", "kapillar", "meter", "messger\xC3\xA4t", "bgm", "smbg",
            "strip", "calibrat", "kalibr"})) {
        meaning.diary = DiaryKind::finger_prick;
    } else if (is({"keton"})) {
        meaning.diary = DiaryKind::ketones;
    } else if (is({"a1c", "lab"})) {
        meaning.diary = DiaryKind::lab;
    } else if (is({"insulin", "medic", "tablet", "drug"})) {
        meaning.diary = DiaryKind::medicine;
    } else if (is({"meal", "food", "breakfast", "lunch", "dinner", "snack", "ate", "mahlzeit",
                   "essen"})) {
        meaning.diary = DiaryKind::meal;
    } else if (is({"sleep", "slept", "schlaf"})) {
        meaning.diary = DiaryKind::sleep;
    } else if (is({"walk", "exercise", "movement", "activity", "sport", "moved", "cycl", "run",
                   "bewegung"})) {
        meaning.diary = DiaryKind::movement;
    } else if (is({"mood", "stress", "felt", "stimmung"})) {
        meaning.diary = DiaryKind::mood;
    } else if (is({"alcohol", "wine", "beer", "alkohol"})) {
        meaning.diary = DiaryKind::alcohol;
    } else if (is({"ill", "fever", "krank"})) {
        meaning.diary = DiaryKind::illness;
    } else if (is({"symptom"})) {
        meaning.diary = DiaryKind::symptom;
    } else if (is({"glucose", "glukose", "cgm", "sensor reading"}) || names_blood_glucose(kind)) {
        meaning.glucose = true;
        meaning.sensed = names_sensed_glucose(kind);
        meaning.of_blood = names_blood_glucose(kind);
    } else if (is({"sensor"})) {
        meaning.diary = DiaryKind::sensor;
        meaning.sensed = says_how_measured(kind);
    } else if (is({"note", "comment", "notiz"})) {
        meaning.diary = DiaryKind::note;
    } else {
        return std::nullopt;
    }
    return meaning;
}

bool says_how_measured(std::string_view kind) {
    constexpr std::array words{"sensor",           "cgm",          "meter",       "glucometer",
                               "messger\xC3\xA4t", "bgm",          "smbg",        "finger",
                               "fingerstick",      "finger stick", "fingerprick", "finger prick",
                               "capillary",        "kapillar",     "strip"};
    return std::find(words.begin(), words.end(), words_of(kind)) != words.end();
}

}  // namespace tracewright

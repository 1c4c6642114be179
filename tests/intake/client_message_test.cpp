#include "intake/client_message.hpp"

#include "diary/finger_prick.hpp"

#include <date/date.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace tracewright;

namespace {

constexpr CivilDate tuesday{std::chrono::local_days{std::chrono::year{2026} / 3 / 3}};

MessageOptions options() {
    MessageOptions result;
    result.day = tuesday;
    result.zones = ZoneHistory{*Zone::named("Europe/Berlin")};
    return result;
}

std::string clock_of(WallTime at) {
    const auto day = std::chrono::floor<std::chrono::days>(at);
    const std::chrono::hh_mm_ss time{at - day};
    char text[32];
    std::snprintf(text, sizeof text, "%+d %02d:%02d", static_cast<int>((day - tuesday).count()),
                  static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()));
    const std::string all = text;
    return all.substr(all.starts_with("+0") ? 3 : 0);
}

// "08:10 meal 'porridge'": the day if another, '?' for an uncertain time, length in minutes,
// number.
std::string in_short(const std::vector<ProposedEntry>& message) {
    std::string all;
    for (const ProposedEntry& one : message) {
        const DiaryEntry& entry = one.entry;
        all += all.empty() ? "" : "; ";
        all += clock_of(entry.written) + (entry.time_uncertain ? "? " : " ") + name_of(entry.kind);
        if (entry.slot) {
            all += " " + *entry.slot;
        }
        all += " '" + entry.text + "'";
        if (entry.until) {
            all += " to +" + std::to_string((*entry.until - entry.at).count() / 60);
        }
        if (entry.number) {
            all += " " + std::to_string(*entry.number).substr(0, 3) + entry.number_unit;
        }
        if (entry.glucose) {
            all += " =" + std::to_string(entry.glucose->hundredths);
        }
    }
    return all;
}

}  // namespace

// Ours, no source: how clients write. Tuesday, 3 March 2026 is the day told of; '?' is a time that
// is not certain.
TEST(ClientMessage, reads_how_clients_write) {
    const struct {
        const char* text;
        const char* read;
    } rows[] = {
        {"8:10 porridge and banana, walked 20 min",
         "08:10 meal 'porridge and banana'; 08:10? movement 'walked 20 min' 20.min"},
        {"lunch 12:30 rice w chicken; slept 6h; felt tired",
         "12:30 meal lunch 'rice w chicken'; 00:00? sleep 'slept 6h' 6.0h; 12:30? mood 'felt "
         "tired'"},
        {"8.10 porridge", "08:10 meal 'porridge'"},
        {"8h10 porridge, coffee", "08:10 meal 'porridge, coffee'"},
        {"8am porridge\n12:30pm rice\n7 pm pizza, 2 beers",
         "08:00 meal 'porridge'; 12:30 meal 'rice'; 19:00 alcohol '2 beers'; 19:00 meal 'pizza, 2 "
         "beers'"},
        {"porridge at 8:10 with banana, lunch 12:30 rice",
         "08:10 meal 'porridge with banana'; 12:30 meal lunch 'rice'"},
        {"8:10 porridge 10:30 coffee", "08:10 meal 'porridge'; 10:30 meal 'coffee'"},
        {"8:00\ntoast\n12:00\nrice", "08:00 meal 'toast'; 12:00 meal 'rice'"},
        {"8.10 a.m. toast. 9 am walk 10 min.",
         "08:10 meal 'toast'; 09:00 movement 'walk 10 min' to +10 10.min"},
        {"8:10 2 slices of toast, 1.5 cups of milk",
         "08:10 meal '2 slices of toast, 1.5 cups of milk'"},
        {"8:10 porridge and then walked 15 min",
         "08:10 meal 'porridge'; 08:10? movement 'walked 15 min' 15.min"},
        {"fruit juice at 16:00", "16:00 meal 'fruit juice'"},
        {"~8:10 toast", "08:10? meal 'toast'"},
        // times that are not written, or not whole
        {"Breakfast: porridge\nLunch: rice\nDinner: nothing much",
         "08:00? meal breakfast 'porridge'; 13:00? meal lunch 'rice'; 19:00? note 'Dinner: nothing "
         "much'"},
        {"dinner 7:30 pasta", "19:30? meal dinner 'pasta'"},
        {"8:10 toast, 1:15 rice, 7:30 fish",
         "08:10 meal 'toast'; 13:15? meal 'rice'; 19:30? meal 'fish'"},
        {"12:30 rice\n3:15 woke sweating", "12:30 meal 'rice'; 03:15? symptom 'woke sweating'"},
        {"8:10 toast\n12:30 rice\n3:15 woke sweating\n7:30 fish",
         "08:10 meal 'toast'; 12:30 meal 'rice'; 03:15? symptom 'woke sweating'; 19:30? meal "
         "'fish'"},
        {"12:30 rice\n4:00 coffee before night shift",
         "12:30 meal 'rice'; 16:00? note 'coffee before night shift'"},
        {"12:30 rice\n3:15 sweating", "12:30 meal 'rice'; 15:15? symptom 'sweating'"},
        {"8:00 toast, 1 pm rice", "08:00? meal 'toast'; 13:00 meal 'rice'"},
        {"took metformin 500 at 8", "08:00? medicine 'took metformin 500'"},
        {"10:00 steroid injection", "10:00 medicine 'steroid injection'"},
        {"10:00 cortisone in the knee", "10:00 medicine 'cortisone in the knee'"},
        {"8:00 had my steroids with toast", "08:00 medicine 'my steroids with toast'"},
        {"injection at 9:15", "09:15 medicine 'injection'"},
        {"10:00 flu injection", "10:00 note 'flu injection'"},
        {"10:00 flu jab", "10:00 note 'flu jab'"},
        {"10:00 flu", "10:00 illness 'flu'"},
        {"10:00 no fever any more", "10:00 note 'no fever any more'"},
        {"10:00 no longer ill", "10:00 note 'no longer ill'"},
        {"10:00 no appetite and sick", "10:00 illness 'no appetite and sick'"},
        {"no breakfast", "12:00? note 'no breakfast'"},
        {"8:10", "08:10 note '8:10'"},
        // days
        {"yesterday 8:10 porridge", "-1 08:10 meal 'porridge'"},
        {"Mon 8:10 porridge", "-1 08:10 meal 'porridge'"},
        {"2 March 8:10 porridge\n3 March 9:00 toast",
         "-1 08:10 meal 'porridge'; 09:00 meal 'toast'"},
        {"02.03.2026 8:10 toast", "-1 08:10 meal 'toast'"},
        {"2026-03-02 8:10 toast", "-1 08:10 meal 'toast'"},
        {"31.02.2026 8:10 toast", "12:00? note '31.02.2026'; 08:10 meal 'toast'"},
        // sleep
        {"slept 23:00-6:30", "-1 23:00 sleep 'slept' to +450"},
        {"slept 23:00\xE2\x80\x93"
         "6:30",
         "-1 23:00 sleep 'slept' to +450"},
        {"slept from 23:30 to 7", "-1 23:30 sleep 'slept' to +450"},
        {"slept 11:00-6:30", "-1 23:00? sleep 'slept' to +450"},
        {"dinner 19:00 soup; slept 23:00-6:30",
         "19:00 meal dinner 'soup'; 23:00 sleep 'slept' to +450"},
        {"went to bed 11pm, woke 6:30", "-1 23:00 sleep 'went to bed, woke' to +450"},
        {"slept badly, 6h30", "00:00? sleep 'slept badly, 6h30' 6.5h"},
        // the rest
        {"walked 18:00-18:30", "18:00 movement 'walked' to +30"},
        {"1h30 walk", "12:00? movement '1h30 walk' 90.min"},
        {"bg 5.6 at 7:30", "07:30 finger-prick 'bg 5.6' =560"},
        {"7:30 glucose 112", "07:30 finger-prick 'glucose 112' =11200"},
        {"7:30 finger prick LO", "07:30 finger-prick 'finger prick LO' =110"},
        {"7:30 fingerprick HI", "07:30 finger-prick 'fingerprick HI' =3330"},
        {"7:30 LO", "07:30 finger-prick 'LO' =110"},
        {"7:30 low", "07:30 finger-prick 'low' =110"},
        {"7:30 glucose low", "07:30 finger-prick 'glucose low' =110"},
        {"7:30 sensor LOW", "07:30 finger-prick 'sensor LOW' =110"},
        {"7:30 meter says high", "07:30 finger-prick 'meter says high' =3330"},
        {"7:30 glucose low 3.4", "07:30 finger-prick 'glucose low 3.4' =340"},
        {"7:30 felt low", "07:30 mood 'felt low'"},
        {"low 2.6 at 4:10", "04:10 finger-prick 'low 2.6' =260"},
        {"2.6 at 4:10", "04:10 finger-prick '2.6' =260"},
        {"sugar 2.6 at 4:10", "04:10 finger-prick 'sugar 2.6' =260"},
        {"7:30 sugar was 4,1", "07:30 finger-prick 'sugar was 4,1' =410"},
        {"went low at 3, wife gave me juice",
         "03:00? symptom 'went low'; 03:00? symptom 'wife gave me juice'"},
        {"7:30 low carb bread", "07:30 note 'low carb bread'"},
        {"7:30 2 sugars in tea", "07:30 meal '2 sugars in tea'"},
        {"slept 23-6:30", "-1 23:00 sleep 'slept' to +450"},
        {"slept 5-6 hours", "00:00? sleep 'slept 5-6 hours' 6.0h"},
        {"7:10 wholemeal bread, egg, 30 g carbohydrate",
         "07:10 meal 'wholemeal bread, egg, 30 g carbohydrate'"},
        {"7:30 glucose was high after pizza", "07:30 note 'glucose was high after pizza'"},
        {"ketones 0.4 at 9:00", "09:00 ketones 'ketones 0.4' 0.4mmol/L"},
        {"dinner 19:00 pasta with a glass of wine",
         "19:00 alcohol 'a glass of wine'; 19:00 meal dinner 'pasta with a glass of wine'"},
        {"2 glasses of wine at 21:00", "21:00 alcohol '2 glasses of wine'"},
        {"10:00 had a headache", "10:00 symptom 'a headache'"},
        {"sensor fell off at 14:00", "14:00 sensor 'sensor fell off'"},
        {"8:10 kedgeree", "08:10 note 'kedgeree'"},
        {"8:10 had kedgeree", "08:10 meal 'kedgeree'"},
        {"", ""},
    };
    for (const auto& row : rows) {
        EXPECT_EQ(in_short(client_message(row.text, options())), row.read) << row.text;
    }
}

TEST(ClientMessage, a_missing_time_and_an_unknown_word_are_told) {
    const auto read = client_message("kedgeree, walked 20 min", options());
    ASSERT_EQ(read.size(), 2U);
    for (const ProposedEntry& one : read) {
        EXPECT_TRUE(one.time_missing);
        EXPECT_TRUE(one.entry.time_uncertain);
        EXPECT_FALSE(one.sure());
    }
    EXPECT_EQ(read[0].doubts[0].sentence, "not understood: kept as a note");
    EXPECT_TRUE(client_message("8:10 150 g banana", options())[0].sure());
}

// Safety rule 2: a LOW whose floor is unknown counts as very low.
TEST(ClientMessage, a_meter_that_shows_no_number_makes_a_finger_prick_beyond_its_limit) {
    const auto read = [](const char* text) { return client_message(text, options()).at(0); };
    EXPECT_EQ(meter_limit(read("7:30 finger prick LO").entry), MeterLimit::shows_low);
    EXPECT_TRUE(read("7:30 finger prick LO").sure());
    EXPECT_EQ(meter_limit(read("7:30 finger prick HI").entry), MeterLimit::shows_high);
    const ProposedEntry low = read("7:30 glucose low");
    EXPECT_EQ(meter_limit(low.entry), MeterLimit::shows_low);
    EXPECT_EQ(low.doubts.at(0).sentence,
              "taken for a finger-prick too low for the meter to show: please ask what was shown");
    for (const char* other : {"8:10 low fat yoghurt", "8:10 glucose 5.6", "Hi, 8:10 porridge",
                              "8:10 low sugar juice", "8:10 felt low"}) {
        for (const ProposedEntry& one : client_message(other, options())) {
            EXPECT_EQ(meter_limit(one.entry), MeterLimit::none) << other;
        }
    }
}

// Invented. The ladder reads these kinds and their text; food would hide them.
TEST(ClientMessage, an_emergency_or_anothers_help_is_no_food_whatever_its_verb) {
    const struct {
        const char* text;
        const char* read;
    } rows[] = {
        {"had a seizure", "12:00? symptom 'had a seizure'"},
        {"had a fit at 10:00", "10:00 symptom 'had a fit at 10:00'"},
        {"14:00 fainted", "14:00 symptom '14:00 fainted'"},
        {"had chest pain at 10:00", "10:00 symptom 'had chest pain at 10:00'"},
        {"my son had to help me with a low at 16:00",
         "16:00 symptom 'my son had to help me with a low at 16:00'"},
        {"paramedics gave glucagon", "12:00? symptom 'paramedics gave glucagon'"},
        {"8:00 toast, then passed out", "08:00 meal 'toast'; 08:00? symptom 'passed out'"},
    };
    for (const auto& row : rows) {
        EXPECT_EQ(in_short(client_message(row.text, options())), row.read) << row.text;
    }
}

// Safety rule 2: one finger-prick is enough, in either unit.
TEST(ClientMessage, a_level_that_is_named_is_one_in_the_other_unit_too) {
    MessageOptions mg = options();
    mg.unit = GlucoseUnit::mg_per_dl;
    const struct {
        const char* text;
        const char* read;
    } in_mg[] = {
        {"sugar was 2.6 at 17:00", "17:00 finger-prick 'sugar was 2.6' =260"},
        {"17:00 blood sugar 2.6", "17:00 finger-prick 'blood sugar 2.6' =260"},
        {"my sugar dropped to 2.5 at 3:00", "03:00 finger-prick 'my sugar dropped to 2.5' =250"},
        {"low 2.6 at 15:00", "15:00 finger-prick 'low 2.6' =260"},
        {"17:00 sugar 2,6", "17:00 finger-prick 'sugar 2,6' =260"},
        {"17:00 sugar 48", "17:00 finger-prick 'sugar 48' =4800"},
        {"BS 48 at 17:00", "17:00 finger-prick 'BS 48' =4800"},
    };
    for (const auto& row : in_mg) {
        const auto read = client_message(row.text, mg);
        EXPECT_EQ(in_short(read), row.read) << row.text;
        const bool mmol = std::string_view(row.read).find("=2") != std::string_view::npos;
        EXPECT_EQ(read.at(0).entry.glucose->unit,
                  mmol ? GlucoseUnit::mmol_per_l : GlucoseUnit::mg_per_dl)
            << row.text;
    }
    const auto read = client_message("sugar was 47 at 17:00", options());
    EXPECT_EQ(in_short(read), "17:00 finger-prick 'sugar was 47' =4700");
    EXPECT_EQ(read.at(0).entry.glucose->unit, GlucoseUnit::mg_per_dl);
}

// No meter shows mg/dL with a decimal: read as mg/dL a very high would be told as a very low.
TEST(ClientMessage, a_level_with_a_decimal_is_mmol_whatever_the_client_uses) {
    MessageOptions mg = options();
    mg.unit = GlucoseUnit::mg_per_dl;
    const struct {
        const char* text;
        int hundredths;
        GlucoseUnit unit;
        const char* doubt;
    } rows[] = {
        {"my sugar was 19.5 at 14:00", 1950, GlucoseUnit::mmol_per_l,
         "the unit is not written: mmol/L is taken"},
        {"14:00 BG 33.3", 3330, GlucoseUnit::mmol_per_l,
         "the unit is not written: mmol/L is taken"},
        {"14:00 18,0", 1800, GlucoseUnit::mmol_per_l, "the unit is not written: mmol/L is taken"},
        {"14:00 2.6", 260, GlucoseUnit::mmol_per_l, "the unit is not written: mmol/L is taken"},
        {"14:00 glucose 48.5", 4850, GlucoseUnit::mg_per_dl,
         "the unit is not written: mg/dL is taken, which no meter shows with a decimal: please ask "
         "what was shown"},
        {"14:00 sugar 19", 1900, GlucoseUnit::mg_per_dl,
         "the unit is not written: mg/dL is taken, though 19 may be mmol/L as well: please ask"},
        {"14:00 sugar 112", 11200, GlucoseUnit::mg_per_dl,
         "the unit is not written: mg/dL is taken"},
        {"14:00 glucose 19.5 mg/dl", 1950, GlucoseUnit::mg_per_dl, ""},
    };
    for (const auto& row : rows) {
        const auto read = client_message(row.text, mg);
        ASSERT_EQ(read.size(), 1U) << row.text;
        ASSERT_TRUE(read[0].entry.glucose) << row.text;
        EXPECT_EQ(read[0].entry.glucose->hundredths, row.hundredths) << row.text;
        EXPECT_EQ(read[0].entry.glucose->unit, row.unit) << row.text;
        EXPECT_EQ(read[0].doubts.empty() ? "" : read[0].doubts[0].sentence, row.doubt) << row.text;
    }
    const auto mmol = client_message("14:00 sugar was 25", options());
    ASSERT_EQ(mmol.size(), 1U);
    EXPECT_EQ(mmol[0].doubts.at(0).sentence,
              "the unit is not written: mmol/L is taken, though 25 may be mg/dL as well: please "
              "ask");
}

TEST(ClientMessage, energy_behind_a_comma_stays_with_its_meal) {
    for (const char* energy : {"340 kcal", "340kcal", "about 340 calories", "1400 kJ"}) {
        const auto read = client_message(std::string("8:10 toast, ") + energy, options());
        EXPECT_EQ(in_short(read), std::string("08:10 meal 'toast, ") + energy + "'") << energy;
    }
    EXPECT_EQ(in_short(client_message("9:00 walked 20 min, 90 kcal", options())),
              "09:00 movement 'walked 20 min' to +20 20.min; 09:00? note '90 kcal'");
}

// How long an illness has lasted stays with its words, for the ladder reads them there.
TEST(ClientMessage, an_illness_keeps_since_when_and_how_long) {
    const struct {
        const char* text;
        const char* read;
    } rows[] = {
        {"vomiting for 10 hours", "12:00? illness 'vomiting for 10 hours'"},
        {"14:00 loose stools for two days", "14:00 illness 'loose stools for two days'"},
        {"14:00 had the runs all day", "14:00 illness 'the runs all day'"},
        {"diarrhoea", "12:00? illness 'diarrhoea'"},
        {"no more diarrhoea", "12:00? note 'no more diarrhoea'"},
        {"no loose stools any more", "12:00? note 'no loose stools any more'"},
        {"vomiting since yesterday", "12:00? illness 'vomiting since yesterday'"},
        {"since yesterday flu and fever", "12:00? illness 'since yesterday flu and fever'"},
        {"ill since Monday", "12:00? illness 'ill since Monday'"},
        {"14:00 vomiting since 3 am", "14:00 illness 'vomiting since 3 am'"},
        {"vomiting since last night", "12:00? illness 'vomiting since last night'"},
        {"sensor off since 8:10", "08:10 sensor 'sensor off since'"},
        {"vomited yesterday at 14:00", "-1 14:00 illness 'vomited'"},
    };
    for (const auto& row : rows) {
        EXPECT_EQ(in_short(client_message(row.text, options())), row.read) << row.text;
    }
}

TEST(ClientMessage, a_count_of_tablets_or_sweets_is_no_level) {
    for (const char* text : {"had 2 glucose tabs at 15:00", "15:00 took 3 glucose tablets",
                             "ate 3 glucose sweets at 15:00", "15:00 2 dextrose tabs"}) {
        const auto read = client_message(text, options());
        ASSERT_EQ(read.size(), 1U) << text;
        EXPECT_EQ(read[0].entry.kind, DiaryKind::meal) << text;
        EXPECT_FALSE(read[0].entry.glucose) << text;
    }
    const auto low = client_message("low 3.1 at 15:00, 2 glucose tabs", options());
    ASSERT_EQ(low.size(), 2U);
    EXPECT_EQ(low[0].entry.glucose->hundredths, 310);
    EXPECT_EQ(low[1].entry.kind, DiaryKind::meal);
    const auto both = client_message("15:00 low 2.6 and 2 glucose tabs", options());
    EXPECT_EQ(both.at(0).entry.glucose->hundredths, 260);
}

TEST(ClientMessage, carbohydrate_is_only_what_the_message_says) {
    const auto read = client_message("8:10 toast (45 g carbs); 9:00 banana", options());
    ASSERT_EQ(read.size(), 2U);
    EXPECT_EQ(read[0].entry.carbohydrate_g->value, 45);
    EXPECT_FALSE(read[1].entry.carbohydrate_g);
    EXPECT_NEAR(read[1].eaten->total->grams, 118 * 0.2284, 1e-9);  // USDA SR26, NDB 09040
}

// 29 March 2026: 02:30 is skipped in Berlin; 25 October: 02:30 comes twice.
TEST(ClientMessage, the_clock_change_is_told) {
    MessageOptions change = options();
    change.day = std::chrono::local_days{std::chrono::year{2026} / 3 / 29};
    EXPECT_TRUE(client_message("2:30 toast", change)[0].entry.time_uncertain);
    change.day = std::chrono::local_days{std::chrono::year{2026} / 10 / 25};
    EXPECT_TRUE(client_message("2:30 toast", change)[0].entry.time_uncertain);
    EXPECT_FALSE(client_message("3:30 toast", change)[0].entry.time_uncertain);
}

// A small grammar, so that the answer is known: times ascending, foods of the table.
RC_GTEST_PROP(ClientMessage, reads_back_what_a_plain_writer_wrote, ()) {
    const auto foods =
        rc::gen::elementOf(std::vector<std::string>{"banana", "porridge", "toast", "2 eggs"});
    const auto marks = rc::gen::elementOf(std::vector<std::string>{":", ".", "h"});
    const int count = *rc::gen::inRange(1, 6);
    std::string text;
    std::string expected;
    int clock = 0;
    for (int i = 0; i < count; ++i) {
        clock += *rc::gen::inRange(1, 230);
        const std::string food = *foods;
        char written[32];
        std::snprintf(written, sizeof written, "%d%s%02d ", clock / 60, (*marks).c_str(),
                      clock % 60);
        text += written + food + *rc::gen::elementOf(std::vector<std::string>{"\n", "; ", ". "});
        std::snprintf(written, sizeof written, "%02d:%02d meal '", clock / 60, clock % 60);
        expected += (i > 0 ? "; " : "") + std::string(written) + food + "'";
    }
    RC_ASSERT(in_short(client_message(text, options())) == expected);
}

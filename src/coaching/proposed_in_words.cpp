#include "coaching/proposed_in_words.hpp"

#include "coaching/phrases.hpp"

#include <algorithm>
#include <charconv>
#include <string>
#include <vector>

namespace tracewright {

namespace {

constexpr std::string_view fasting =
    "fasting|fasts|fast day*|fast until|fast for|fast on|fast from|fast till|fast after|"
    "intermittent*|eat nothing|eating nothing|nothing to eat|no food|without food|16:8|18:6|"
    "20:4|5:2|time-restrict*|time restrict*|eating window*|omad|ramadan|nothing until|"
    "nothing till|nothing after|nothing between|nothing from|nothing before|nothing but|"
    "nothing more|only water|just water|water only|water until|only tea|just tea|only coffee|"
    "just coffee|only black|just black|black coffee|only broth|just broth|broth only|"
    "only soup|juice only|only juice|juice day*|soup day*|liquid day*|only liquids|"
    "alternate day*|eat only between|only eat between|eat between|eating between|"
    "eat only from|only eat from|food between|food only|meals between|meals only|"
    "eat only after|only eat after|not eat until|don't eat until|not eat after|"
    "don't eat after|no eating|not eating|stop eating|don't eat before|first meal|first food|"
    "brunch|late breakfast|later breakfast|breakfast later|delay breakfast|push breakfast|"
    "last bite by|last bite at|last bite before|first bite at|first bite after|first bite not|"
    "water and tea|tea and water|water for breakfast|water for lunch|water for dinner|"
    "tea for breakfast|tea for lunch|tea for dinner|coffee for breakfast|coffee for lunch|"
    "coffee for dinner|breakfast pushed|breakfast at noon|breakfast at midday|breakfast "
    "moved|cleanse*|detox*|"
    "kitchen closed|kitchen closes|fridge closed";
constexpr std::string_view leaves =
    "skip|skipping|skipped|miss|missing|leave out|leaving out|drop|dropping|omit|cut out|"
    "give up|forgo|go without|not eat|don't eat|dont eat|do not eat|never eat|replace|"
    "replacing|instead of|swap|scrap";
constexpr std::string_view meals =
    "breakfast|lunch|dinner|supper|a meal|meal|meals|one meal|breakfasts|dinners|lunches|"
    "suppers";
constexpr std::string_view other_skipping =
    "one meal a day|two meals a day|one meal per day|two meals per day|only one meal|"
    "only two meals|one meal only|two meals only|just one meal|just two meals|one meal on|"
    "not eating in the|not eat in the|don't eat in the|meal replacement*|meal shake*|"
    "diet shake*|shakes";
constexpr std::string_view low_carbohydrate =
    "low carb*|low-carb*|lower carb*|no carb*|less carb*|fewer carb*|cut carb*|without carb*|"
    "carb-free|carb free|carbohydrate-free|carbohydrate free|free of carb*|keto*|zero carb*|"
    "cut out carb*|very few carb*|few carb*|little carb*|cut back on carb*|cut down on carb*|"
    "avoid carb*|low starch|low-starch|starch-free|no starch*|less starch*|"
    "cut back on starch*|cut down on starch*|cut starch*|atkins|carnivore|paleo|only meat|"
    "just meat|meat only|meat and salad|only salad|only protein|only vegetables|protein only";
constexpr std::string_view leaves_food =
    "no|not|without|leave|leaving|skip|skipping|drop|cut out|give up|giving up|avoid*|"
    "don't eat|dont eat|never|stay off|keep off|stop eating|quit|ban|bans";
constexpr std::string_view staples =
    "bread*|rice|pasta|potato*|noodle*|cereal*|grain*|starch*|carb*|flour|oats|spaghetti|"
    "couscous";
constexpr std::string_view weight_loss =
    "weight loss|lose weight|losing weight|lose some weight|shed weight|shed some|shed the|"
    "drop weight|less weight|weight down|reduce weight|reduce my weight|reduce your weight|"
    "slim*|thinner|lighter|diet|diets|dieting|calorie*|kcal|starv*|target weight|goal weight|"
    "bmi|waist*|burn fat|lose fat";
constexpr std::string_view weights = "kg|kilo*|pound*|stone*|lb*";
constexpr std::string_view gets_lighter =
    "lose|losing|lost|drop|shed|down|off|reduce|less|below|under|reach|get to|getting to|"
    "come to|target|goal";
constexpr std::string_view weighing = "weigh|weighs|weighing|weighed|scales|weight";
constexpr std::string_view moving =
    "walk*|run|running|jog*|stairs|exercis*|cycle|cycling|bike|biking|bicycle|swim*|gym|"
    "squat*|dance|dancing|hike|hiking|sport*|workout*|work out|treadmill|steps|step count*|"
    "stepper|push-up*|push up*|press-up*|press up*|sit-up*|sit up*|plank*|climb*|stroll*|"
    "nordic|skip rope|skipping rope|jump*|movement|move more|moving more|more active|"
    "be active|activity|football|tennis|badminton|basketball|yoga|pilates|tai chi|qigong|"
    "get off the bus|off the bus|on foot|by foot|training|aerobic*|rowing|marching|march on|"
    "march in place|gardening|garden an|garden for|garden half|stretching|stretches|"
    "elliptical|cross-trainer|cross trainer|skate*|skating|ski|skiing|hill|weights|dumbbell*|"
    "kettlebell*|resistance band*|lunges|burpee*|stand up|get up and|trot*|ramble*|rambling|"
    "golf|bowling|zumba|trampoline|spinning";

// Asked before phrases are made with it: most texts hold few of the words.
bool holds(std::string_view text, std::string_view word) {
    return text.find(word) != std::string_view::npos;
}

bool skips_a_meal(std::string_view text) {
    std::vector<std::string_view> held = phrases_in(leaves);
    std::erase_if(held, [&](std::string_view leave) { return !holds(text, leave); });
    for (const std::string_view meal : phrases_in(meals)) {
        if (!holds(text, meal)) {
            continue;
        }
        for (const std::string_view leave : held) {
            for (const char* between : {" ", " my ", " the ", " your ", " a ", " any "}) {
                if (says(text, std::string(leave) + between + std::string(meal))) {
                    return true;
                }
            }
        }
        // "no dinner after 19:30" is an hour, not a meal left out.
        for (const char* denial : {"no ", "without "}) {
            const std::string phrase = denial + std::string(meal);
            const auto at = text.find(phrase);
            if (says(text, phrase) && !text.substr(at + phrase.size()).starts_with(" after") &&
                !text.substr(at + phrase.size()).starts_with(" later")) {
                return true;
            }
        }
    }
    return says_any(text, other_skipping);
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// "20 g carbs", "50 grams of carbohydrate"
bool counts_carbohydrate(std::string_view text) {
    for (const std::string_view unit : {"g ", "gram ", "grams ", "gr "}) {
        if (!holds(text, unit)) {
            continue;
        }
        for (const std::string_view of : {"", "of "}) {
            for (const std::string_view what : {"carb*", "starch*", "sugar*", "net carb*"}) {
                if (says(text, std::string(unit) + std::string(of) + std::string(what))) {
                    return true;
                }
            }
        }
    }
    return says(text, "carb limit") || says(text, "count carb*") || says(text, "counting carb*");
}

// Minutes after midnight of each "17:00", "noon" or "midnight", in order.
std::vector<int> clocks_in(std::string_view text) {
    std::vector<int> clocks;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto rest = text.substr(i);
        const bool begins = i == 0 || text[i - 1] == ' ' || text[i - 1] == '-';
        if (begins && (rest.starts_with("noon") || rest.starts_with("midday"))) {
            clocks.push_back(12 * 60);
        } else if (rest[0] == ':' && i >= 1 && is_digit(text[i - 1]) && rest.size() >= 3 &&
                   is_digit(rest[1]) && is_digit(rest[2])) {
            const auto from = i >= 2 && is_digit(text[i - 2]) ? i - 2 : i - 1;
            int hours = 0;
            int minutes = 0;
            std::from_chars(text.data() + from, text.data() + i, hours);
            std::from_chars(rest.data() + 1, rest.data() + 3, minutes);
            const auto after = rest.substr(3);
            const bool pm = after.starts_with(" pm") || after.starts_with(" p.m");
            clocks.push_back((hours + (pm && hours < 12 ? 12 : 0)) * 60 + minutes);
        }
    }
    return clocks;
}

// A night of more than 12 hours between two clocks beside food, or a breakfast towards noon.
bool fasts_by_the_clock(std::string_view part) {
    constexpr std::string_view of_food =
        "eat*|food|meal*|breakfast|lunch|dinner|supper|nothing|kitchen|snack*";
    if (!says_any(part, of_food)) {
        return false;
    }
    const std::vector<int> clocks = clocks_in(part);
    for (std::size_t i = 0; i + 1 < clocks.size(); ++i) {
        if (clocks[i] >= 12 * 60 && clocks[i + 1] <= clocks[i] &&
            clocks[i + 1] + 24 * 60 - clocks[i] > 12 * 60) {
            return true;
        }
    }
    return says(part, "breakfast") && clocks.size() == 1 && clocks[0] >= 10 * 60 &&
           clocks[0] < 16 * 60;
}

// "a fast", "try to fast", not "walk fast" and not "fast sugar".
bool ends_in_fast(std::string_view text) {
    for (auto at = text.find("fast"); at != std::string_view::npos;
         at = text.find("fast", at + 1)) {
        const bool begins = at == 0 || text[at - 1] == ' ';
        const bool ends = at + 4 == text.size() ||
                          std::string_view(".,;!").find(text[at + 4]) != std::string_view::npos;
        if (begins && ends) {
            return !says_any(text, moving);
        }
    }
    return false;
}

// Parts of a change are parted by ";": words of two of them are not read together.
template <typename Rule>
bool in_any_part(std::string_view text, const Rule& rule) {
    while (!text.empty()) {
        const auto end = std::min(text.find(';'), text.size());
        if (rule(text.substr(0, end))) {
            return true;
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return false;
}

bool fasts(std::string_view text) {
    return says_any(text, fasting) || ends_in_fast(text) || in_any_part(text, fasts_by_the_clock);
}

bool says_both(std::string_view text, std::string_view one, std::string_view other) {
    return in_any_part(
        text, [&](std::string_view part) { return says_any(part, one) && says_any(part, other); });
}

// "no phone after dinner" limits no dinner.
std::string without_meals_as_times(std::string text) {
    for (const std::string_view time : {"after ", "before ", "since "}) {
        if (!holds(text, time)) {
            continue;
        }
        for (const std::string_view whose : {"", "the ", "my ", "your ", "every ", "each "}) {
            for (const std::string_view meal :
                 {"breakfast", "lunch", "dinner", "supper", "meals", "meal", "eating"}) {
                const std::string phrase =
                    std::string(time) + std::string(whose) + std::string(meal);
                for (auto at = text.find(phrase); at != std::string::npos; at = text.find(phrase)) {
                    text.erase(at, phrase.size());
                }
            }
        }
    }
    return text;
}

}  // namespace

std::vector<Proposed> proposed_in(std::string_view words) {
    const std::string text = for_phrases(words);
    std::vector<Proposed> found;
    const auto add = [&](bool met, Proposed proposed) {
        if (met) {
            found.push_back(proposed);
        }
    };
    add(says_any(text, low_carbohydrate) || counts_carbohydrate(text) ||
            says_both(text, leaves_food, staples),
        Proposed::low_carbohydrate);
    add(fasts(text), Proposed::fasting);
    add(skips_a_meal(text), Proposed::meal_skipping);
    add(says_any(text, weight_loss) || says_both(text, gets_lighter, weights),
        Proposed::weight_loss);
    add(says_any(text, weighing), Proposed::food_change);
    add(says_any(text, moving), Proposed::walking);
    return found;
}

bool limits_eating(std::string_view words) {
    constexpr std::string_view limits =
        "no|not|don't|dont|never|none|nothing|without|less|fewer|half|halve*|halving|quarter|"
        "third|only|just|under|below|at most|max*|up to|limit*|cut*|avoid*|skip*|leave*|leaving|"
        "drop*|give up|giving "
        "up|stop*|quit*|off|small*|little|replac*|instead|swap*|reduc*|ban|bans|"
        "lighter|light meal*|light dinner|light lunch|light supper|ration*|later|delay*|push*|"
        "two thirds|bird*|tiny|mini*|one slice|one helping|second helping*";
    constexpr std::string_view of_food =
        "eat*|food*|meal*|portion*|helping*|serving*|plate*|bowl*|breakfast*|lunch*|dinner*|"
        "supper*|snack*|dessert*|pudding*|bread*|rice|pasta|potato*|noodle*|starch*|carb*|sugar*|"
        "sweet*|chocolate*|cake*|biscuit*|cookie*|fruit*|juice*|soda*|cola|cereal*|oat*|porridge|"
        "toast*|pizza*|chips|crisps|fries|soup*|fat|hungry|hunger|appetite|seconds|treat*|"
        "ice cream|honey|jam|cheese*|butter|meat*|milk*|yoghurt*|yogurt*|egg|eggs|nut|nuts|beer*|"
        "wine*|alcohol|banana*|apple*|grape*|mango*|corn|couscous|lentil*|bean*|tortilla*|wrap*|"
        "sandwich*|burger*|rolls|pastr*|croissant*|bagel*|muesli|granola|candy|candies|crackers|"
        "syrup|ketchup|lemonade|smoothie*";
    const std::string text = without_meals_as_times(for_phrases(words));
    return says_both(text, limits, of_food);
}

}  // namespace tracewright

#include "cli/meals_command.hpp"

#include "cli/files_of_client.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <ostream>

namespace tracewright {

namespace {

class Printer {
  public:
    Printer(const MealReport& report, const ReviewInput& input, std::ostream& out)
        : report_(report), input_(input), out_(out) {}

    void print() {
        out_ << report_.occasions.size()
             << (report_.occasions.size() == 1 ? " meal\n" : " meals\n");
        for (std::size_t i = 0; i < report_.occasions.size(); ++i) {
            meal(i);
        }
        out_ << "\nMeals compared (neighbours and time of day taken off)\n";
        if (!report_.overlap.none_because.empty()) {
            out_ << "  No model: " << report_.overlap.none_because << ".\n";
        }
        foods();
        ask_about();
        pairs();
    }

  private:
    const MealReport& report_;
    const ReviewInput& input_;
    std::ostream& out_;

    std::string at(Instant moment) const {
        return day_and_time(input_.zones.wall_time(moment), input_.zones.writing());
    }
    double shown(double mg) const { return converted(mg, GlucoseUnit::mg_per_dl, input_.unit); }
    std::string words(double mg) const { return glucose_words(shown(mg), input_.unit); }

    void meal(std::size_t i) {
        const EatingOccasion& occasion = report_.occasions[i];
        const MealResponse& response = report_.responses[i];
        const std::string what = occasion.not_described    ? "not described"
                                 : occasion.text().empty() ? name_of(occasion.slot)
                                                           : occasion.text();
        out_ << fmt::format("  {}  {}: ", at(occasion.at), what);
        if (!response.not_readable.empty()) {
            out_ << "not readable: " << response.not_readable << "\n";
            return;
        }
        out_ << fmt::format("start {}, peak {} after {:.0f} min{}{}{}\n", words(response.baseline),
                            words(response.peak), response.minutes_to_peak,
                            response.cut_short ? ", cut short by the next meal" : "",
                            response.not_at_rest ? ", not at rest before" : "",
                            response.beyond_limit ? ", beyond the sensor's limit" : "");
    }

    void foods() {
        for (const FoodStanding& food : report_.foods.foods) {
            out_ << fmt::format(
                "  group {}  {}, {} times: {} (80 % interval {} to {}), rank {} to "
                "{} of {}\n",
                food.group, food.food, food.times, words(food.mean),
                glucose_number(shown(food.interval80[0]), input_.unit), words(food.interval80[1]),
                food.ranks80[0], food.ranks80[1], report_.foods.foods.size());
        }
        for (const std::string& sentence : food_sentences(report_.foods, input_.unit)) {
            out_ << "  " << sentence << "\n";
        }
        std::string adjusted;
        for (const std::string& name : report_.foods.adjusted_for) {
            adjusted += (adjusted.empty() ? "" : ", ") + name;
        }
        if (!adjusted.empty()) {
            out_ << "  Adjusted for: " << adjusted << "\n";
        }
    }

    void ask_about() {
        if (report_.ask_about.empty()) {
            return;
        }
        out_ << "\nAsk about (a rise without an entry)\n";
        for (const UnwrittenRise& rise : report_.ask_about) {
            out_ << fmt::format("  {}: up by {}\n", at(rise.from), words(rise.rise));
        }
    }

    void pairs() {
        if (report_.pairs.empty()) {
            return;
        }
        const auto used = std::count_if(report_.pairs.begin(), report_.pairs.end(),
                                        [](const FingerPrickPair& pair) { return pair.used(); });
        out_ << fmt::format("\nFinger-prick pairs: {} used\n", used);
        for (const FingerPrickPair& pair : report_.pairs) {
            if (pair.used()) {
                out_ << fmt::format("  {}: {} to {}\n", at(pair.at),
                                    glucose_number(pair.before->in(input_.unit), input_.unit),
                                    glucose_words(pair.after->in(input_.unit), input_.unit));
            } else {
                out_ << fmt::format("  {}: left out, {}\n", at(pair.at), pair.left_out_because);
            }
        }
        if (report_.mean_pair_rise) {
            out_ << "  Mean rise " << signed_number(*report_.mean_pair_rise) << " "
                 << name_of(input_.unit);
            if (report_.mean_pair_rise95) {
                out_ << fmt::format(" (95 % interval {} to {})",
                                    signed_number((*report_.mean_pair_rise95)[0]),
                                    signed_number((*report_.mean_pair_rise95)[1]));
            }
            // ISO 15197:2013: 95 % of results within 15 % (15 mg/dL below 100).
            out_ << ". A meter may be off by 15 % each time.\n";
        }
    }

    std::string signed_number(double mg) const {
        return (mg < 0 ? "-" : "+") + glucose_number(std::abs(shown(mg)), input_.unit);
    }
};

}  // namespace

Exit meals_of(const ReviewInput& input, bool json, const Streams& streams) {
    const MealReport report = meal_report(input);
    if (json) {
        streams.out << dumped(json_of_meals(report, input));
    } else {
        Printer(report, input, streams.out).print();
    }
    return Exit::done;
}

Exit meals(const FileOptions& files, const std::vector<std::string>& diaries, bool json,
           const Streams& streams) {
    const auto gathered = files_of_client(files, diaries, streams, streams.err);
    if (!gathered) {
        return gathered.error();
    }
    meals_of(gathered->input, json, streams);
    return gathered->exit;
}

}  // namespace tracewright

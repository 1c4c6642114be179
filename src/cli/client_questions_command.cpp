#include "cli/ask_command.hpp"
#include "cli/client_of_practice.hpp"
#include "cli/meals_command.hpp"
#include "cli/practice_commands.hpp"
#include "diary/worked_out_meals.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

void say(const WorkedOut& done, std::ostream& out) {
    if (done.texts == 0) {
        return;
    }
    if (done.by_no_basis) {
        out << "Carbohydrate is not worked out from the texts: the diary's own numbers do not tell "
               "whether fibre is in them.\n\n";
        return;
    }
    out << fmt::format(
        "Carbohydrate of {} of {} meals without it is worked out from their texts, as an "
        "estimate.\n\n",
        done.meals, done.texts);
}

}  // namespace

Exit ask_client(const PracticeOptions& options, const FileOptions& files, const AskOptions& asked,
                const Streams& streams) {
    const auto input = client_of_practice(options, files, "question_asked", !asked.json, streams);
    if (!input) {
        return input.error();
    }
    const KnownOfClient known{input->facts, input->open.practice.coach.licence};
    return ask_of(input->input, asked, streams, &known);
}

Exit meals_client(const PracticeOptions& options, const FileOptions& files, bool json,
                  const Streams& streams) {
    auto client = client_of_practice(options, files, "meals_looked_at", !json, streams);
    if (!client) {
        return client.error();
    }
    const WorkedOut done = work_out_meals(client->input.diary, client->foods);
    if (!json) {
        say(done, streams.out);
    }
    return meals_of(client->input, json, streams);
}

}  // namespace tracewright

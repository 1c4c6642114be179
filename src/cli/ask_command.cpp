#include "cli/ask_command.hpp"

#include "cli/files_of_client.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_offers.hpp"
#include "findings/question_sentences.hpp"
#include "render/ask_json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ostream>
#include <sstream>

namespace tracewright {

namespace {

Exit list_questions(const Streams& streams) {
    streams.out << "Outcomes (--about)\n";
    for (const OutcomeFacts& facts : all_outcomes()) {
        streams.out << fmt::format("  {:<18}{}: {}\n", facts.code, facts.words, facts.means);
    }
    streams.out << "\nCauses (--because)\n";
    for (const CauseFacts& facts : all_causes()) {
        streams.out << fmt::format("  {:<18}{}: {}; told for {}\n", facts.code, facts.words,
                                   facts.means, facts.change);
    }
    streams.out << "\nMedicines and illness are no causes here: they are marked and left out or "
                   "told beside.\n";
    return Exit::done;
}

std::vector<std::string> split_at_commas(const std::vector<std::string>& texts) {
    std::vector<std::string> parts;
    for (const std::string& text : texts) {
        std::istringstream in(text);
        for (std::string part; std::getline(in, part, ',');) {
            if (!part.empty()) {
                parts.push_back(part);
            }
        }
    }
    return parts;
}

Exit refuse(const Streams& streams, const std::string& sentence) {
    streams.err << "tracewright: " << sentence << "\n";
    return Exit::wrong_usage;
}

template <typename Facts>
std::string codes(Facts all) {
    std::string text;
    for (const auto& facts : all) {
        text += (text.empty() ? "" : ", ") + std::string(facts.code);
    }
    return text;
}

struct Asked {
    Outcome outcome{};
    std::vector<Cause> causes;
};

// Error: a sentence.
tl::expected<Asked, std::string> asked_for(const AskOptions& options) {
    const auto outcome = outcome_called(options.about);
    if (!outcome) {
        return tl::make_unexpected(fmt::format("found --about '{}', expected one of {}",
                                               options.about, codes(all_outcomes())));
    }
    Asked asked{*outcome, {}};
    for (const std::string& name : split_at_commas(options.because)) {
        const auto cause = cause_called(name);
        if (!cause) {
            return tl::make_unexpected(
                fmt::format("found --because '{}', expected one of {}", name, codes(all_causes())));
        }
        if (!can_be_asked(*outcome, *cause)) {
            return tl::make_unexpected(
                fmt::format("found --because {} of {}, expected a cause that can come before it",
                            name, facts_of(*outcome).words));
        }
        if (std::find(asked.causes.begin(), asked.causes.end(), *cause) == asked.causes.end()) {
            asked.causes.push_back(*cause);
        }
    }
    if (asked.causes.empty() && !options.scan) {
        return tl::make_unexpected(
            std::string("found no cause, expected --because with at least one, or --scan"));
    }
    return asked;
}

void print_finding(const QuestionFinding& told, const QuestionAnswers& answers, GlucoseUnit unit,
                   std::ostream& out) {
    const Finding& finding = told.finding;
    out << "\n" << finding.question << "\n  " << finding.sentence << "\n";
    if (!finding.next.sentence.empty()) {
        out << "  Next: " << finding.next.sentence << "\n";
    }
    for (const Caveat& caveat : finding.caveats) {
        out << "  - " << caveat.sentence << "\n";
    }
    for (const PublishedEffect& effect : told.others.rows) {
        out << "  Others: " << effect.sentence() << "\n";
    }
    if (told.both) {
        out << fmt::format("  Others (halved and widened) and this client together: {}\n",
                           difference_words(told.both->mean, answers.outcome, unit));
    }
    std::string adjusted;
    for (const std::string& name : finding.evidence.adjusted_for) {
        adjusted += (adjusted.empty() ? "" : ", ") + name;
    }
    if (!adjusted.empty()) {
        out << "  Adjusted for: " << adjusted << "\n";
    }
}

void print_answers(const QuestionAnswers& answers, GlucoseUnit unit, std::ostream& out) {
    out << fmt::format("About {} ({}): {} {} used, {} left out.\n", facts_of(answers.outcome).words,
                       facts_of(answers.outcome).means, answers.rows,
                       rows_called(answers.outcome, answers.rows), answers.left_out.size());
    if (!answers.findings.empty() && !answers.scan) {
        const Evidence& evidence = answers.findings.front().finding.evidence;
        if (!evidence.left_out_why.empty()) {
            out << "Left out: " << evidence.left_out_why << ".\n";
        }
    }
    for (const QuestionFinding& told : answers.findings) {
        print_finding(told, answers, unit, out);
    }
    if (answers.findings.empty()) {
        out << "Nothing could be looked at: no cause varied enough on at least 10 "
            << rows_called(answers.outcome, 2) << ".\n";
    }
    out << "\nWhat goes together need not come from one another.\n";
}

}  // namespace

Exit ask_of(const ReviewInput& input, const AskOptions& options, const Streams& streams,
            const KnownOfClient* known) {
    const auto asked = asked_for(options);
    if (!asked) {
        return refuse(streams, asked.error());
    }
    QuestionSettings settings;
    if (options.worth) {
        if (!(*options.worth > 0)) {
            return refuse(streams, "found --worth that is not above 0, expected a difference");
        }
        settings.worth = facts_of(asked->outcome).unit == OutcomeUnit::hours
                             ? *options.worth
                             : converted(*options.worth, input.unit, GlucoseUnit::mg_per_dl);
    }
    QuestionAnswers answers =
        options.scan ? scan_causes(input, asked->outcome, settings)
                     : answer_questions(input, asked->outcome, asked->causes, settings);
    // Of files nothing is known of the client: that counts as risky.
    const ClientFacts facts = known != nullptr ? known->facts : ClientFacts{};
    const MedicineTimeline medicines = client_medicines(facts, input.zones);
    withhold_trials(answers, {facts, input.wears, input.diary, medicines, input.zones, input.as_of},
                    known != nullptr ? known->licence : Licence::none);
    if (options.json) {
        streams.out << dumped(json_of_answers(answers, input));
    } else {
        print_answers(answers, input.unit, streams.out);
    }
    return Exit::done;
}

Exit ask(const FileOptions& files, const std::vector<std::string>& diaries,
         const AskOptions& options, const Streams& streams) {
    if (options.list) {
        return list_questions(streams);
    }
    if (const auto asked = asked_for(options); !asked) {
        return refuse(streams, asked.error());
    }
    const auto gathered = files_of_client(files, diaries, streams, streams.err);
    if (!gathered) {
        return gathered.error();
    }
    const Exit exit = ask_of(gathered->input, options, streams);
    return exit == Exit::done ? gathered->exit : exit;
}

}  // namespace tracewright

#include "coaching/story_paper.hpp"

#include "coaching/agreed_change.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

// Before anything else a very low, then how old all of it is (safety rules 2 and 6).
void lead(const Story& story, std::vector<PaperBlock>& blocks) {
    if (!story.very_low.empty()) {
        blocks.emplace_back(PaperBox{"First", {story.very_low}});
    }
    blocks.emplace_back(PaperSentence{story.last_reading});
    for (const std::string& sentence : story.care) {
        blocks.emplace_back(PaperSentence{sentence, true});
    }
}

PaperTable line_of(const Story& story, WayOfWriting way) {
    PaperTable line{{"When", "What", ""}, {0.22, 0.13, 0.65}, {}, 0};
    for (const LineRow& row : story.labs.line) {
        const std::string& words = story.fewer_numbers ? row.without_numbers : row.words;
        if (!words.empty()) {
            line.rows.push_back({full_date(row.on, way), row.kind, words});
        }
    }
    return line;
}

std::string head_of(const DidItHelp& one, WayOfWriting way) {
    return fmt::format(
        "\"{}\"{}: {}", one.change.words,
        one.change.agreed_on ? ", agreed " + full_date(*one.change.agreed_on, way) : "",
        one.closed.empty() ? std::string(name_of(one.change.outcome)) : one.closed);
}

void did_it_help(const Story& story, WayOfWriting way, std::vector<PaperBlock>& blocks) {
    blocks.emplace_back(PaperHeading{"Did it help?"});
    for (const DidItHelp& one : story.changes) {
        blocks.emplace_back(PaperSentence{head_of(one, way), true});
        if (!one.compared) {
            blocks.emplace_back(PaperSentence{"Nothing to compare: " + one.none_because});
            continue;
        }
        blocks.emplace_back(PaperSentence{one.compared->finding.sentence});
        PaperList also;
        for (const Caveat& caveat : one.compared->finding.caveats) {
            also.items.push_back(caveat.sentence);
        }
        for (const std::string& other : one.else_changed) {
            also.items.push_back("Also: " + other + ".");
        }
        blocks.emplace_back(std::move(also));
    }
    if (story.changes.empty()) {
        blocks.emplace_back(PaperSentence{"No change was agreed yet."});
    }
}

// Of the changes that the eating screen leaves on the page what became of them, and no more.
void what_was_agreed(const Story& story, WayOfWriting way, std::vector<PaperBlock>& blocks) {
    PaperList agreed;
    for (const DidItHelp& one : story.changes) {
        if (!one.kept_off_paper) {
            agreed.items.push_back(head_of(one, way));
        }
    }
    if (!agreed.items.empty()) {
        blocks.emplace_back(PaperHeading{"What was agreed"});
        blocks.emplace_back(std::move(agreed));
    }
}

void listed(const char* heading, const std::vector<std::string>& items, const char* none,
            std::vector<PaperBlock>& blocks) {
    blocks.emplace_back(PaperHeading{heading});
    if (items.empty()) {
        blocks.emplace_back(PaperSentence{none});
    } else {
        blocks.emplace_back(PaperList{items});
    }
}

}  // namespace

std::string next_lab_words(const NextLab& next, WayOfWriting way) {
    if (next.clinic_leads) {
        return "When A1c is tested next is for the maternity or diabetes clinic to say.";
    }
    return fmt::format("The best date for the next laboratory A1c: {} or later{}.",
                       full_date(next.on, way), next.because.empty() ? "" : ", " + next.because);
}

Paper story_paper(const Story& story, const std::string& of_whom, WayOfWriting way) {
    Paper paper;
    paper.title = of_whom.empty() ? "Our story so far" : "Our story so far: " + of_whom;
    paper.reader = PaperReader::coach;
    paper.one_page = false;
    lead(story, paper.blocks);
    paper.blocks.emplace_back(line_of(story, way));
    if (story.fewer_numbers) {
        what_was_agreed(story, way, paper.blocks);
        NextLab next = story.next_lab;
        next.because.clear();  // it may name a change of food
        paper.blocks.emplace_back(PaperSentence{next_lab_words(next, way), true});
        return paper;
    }
    did_it_help(story, way, paper.blocks);
    for (const Finding& finding : story.trials) {
        paper.blocks.emplace_back(PaperHeading{finding.question});
        paper.blocks.emplace_back(PaperSentence{finding.sentence});
    }
    listed("What was kept", story.kept, "Nothing yet.", paper.blocks);
    listed("What is still unknown", story.unknown, "Nothing of what was asked.", paper.blocks);
    for (const Finding& finding : story.labs.findings) {
        paper.blocks.emplace_back(PaperHeading{finding.question});
        paper.blocks.emplace_back(PaperSentence{finding.sentence});
    }
    paper.blocks.emplace_back(PaperSentence{next_lab_words(story.next_lab, way), true});
    return paper;
}

}  // namespace tracewright

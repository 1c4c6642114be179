#include "coaching/story_paper.hpp"

#include "coaching/agreed_change.hpp"
#include "findings/wording.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

void did_it_help(const Story& story, WayOfWriting way, std::vector<PaperBlock>& blocks) {
    blocks.emplace_back(PaperHeading{"Did it help?"});
    for (const DidItHelp& one : story.changes) {
        blocks.emplace_back(PaperSentence{
            fmt::format(
                "\"{}\"{}: {}", one.change.words,
                one.change.agreed_on ? ", agreed " + full_date(*one.change.agreed_on, way) : "",
                name_of(one.change.outcome)),
            true});
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
    return fmt::format("The best date for the next laboratory A1c: {} or later{}.",
                       full_date(next.on, way), next.because.empty() ? "" : ", " + next.because);
}

Paper story_paper(const Story& story, const std::string& of_whom, WayOfWriting way) {
    Paper paper;
    paper.title = of_whom.empty() ? "Our story so far" : "Our story so far: " + of_whom;
    paper.reader = PaperReader::coach;
    paper.one_page = false;
    PaperTable line{{"When", "What", ""}, {0.22, 0.13, 0.65}, {}, 0};
    for (const LineRow& row : story.labs.line) {
        line.rows.push_back({full_date(row.on, way), row.kind, row.words});
    }
    paper.blocks.emplace_back(std::move(line));
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

#include "coaching/paper.hpp"

namespace tracewright {

namespace {

void append(std::vector<std::string>& texts, const std::vector<std::string>& more) {
    texts.insert(texts.end(), more.begin(), more.end());
}

// Which words of a paper.
struct Wanted {
    bool headings = false;
    bool first_aid = false;
};

void add_words(const PaperBlock& block, const Wanted& wanted, std::vector<std::string>& texts) {
    if (const auto* heading = std::get_if<PaperHeading>(&block)) {
        append(texts, wanted.headings ? std::vector{heading->text} : std::vector<std::string>{});
    } else if (const auto* sentence = std::get_if<PaperSentence>(&block)) {
        texts.push_back(sentence->text);
    } else if (const auto* list = std::get_if<PaperList>(&block)) {
        append(texts, list->items);
    } else if (const auto* box = std::get_if<PaperBox>(&block)) {
        if (wanted.headings && !box->title.empty()) {
            texts.push_back(box->title);
        }
        append(texts,
               !box->first_aid || wanted.first_aid ? box->sentences : std::vector<std::string>{});
    } else if (const auto* room = std::get_if<RoomToWrite>(&block);
               room != nullptr && !room->label.empty()) {
        texts.push_back(room->label);
    }
}

std::vector<std::string> words(const Paper& paper, const Wanted& wanted) {
    std::vector<std::string> texts;
    for (const PaperBlock& block : paper.blocks) {
        add_words(block, wanted, texts);
    }
    return texts;
}

}  // namespace

std::vector<std::string> running_text(const Paper& paper) {
    return words(paper, {false, true});
}

std::vector<std::string> message_of(const Paper& paper) {
    return words(paper, {true, false});
}

std::vector<std::string> contacts_without_number(const Paper& paper) {
    std::vector<std::string> without;
    for (const PaperBlock& block : paper.blocks) {
        const auto* contact = std::get_if<PaperContact>(&block);
        if (contact != nullptr && contact->telephone.empty()) {
            without.push_back(contact->who);
        }
    }
    return without;
}

}  // namespace tracewright

#include "render/paper_json.hpp"

namespace tracewright {

namespace {

struct BlockJson {
    Json operator()(const PaperHeading& heading) const {
        return {{"kind", "heading"}, {"text", heading.text}};
    }
    Json operator()(const PaperSentence& sentence) const {
        return {{"kind", "sentence"}, {"text", sentence.text}, {"strong", sentence.strong}};
    }
    Json operator()(const PaperList& list) const {
        return {{"kind", "list"}, {"items", list.items}};
    }
    Json operator()(const PaperFigure& figure) const {
        return {{"kind", "figure"}, {"place", figure.place}};
    }
    Json operator()(const PaperBox& box) const {
        return {{"kind", "box"},
                {"title", box.title},
                {"sentences", box.sentences},
                {"first_aid", box.first_aid}};
    }
    Json operator()(const RoomToWrite& room) const {
        return {{"kind", "room_to_write"}, {"label", room.label}, {"lines", room.lines}};
    }
    Json operator()(const ZeroToTen& scale) const {
        return {{"kind", "zero_to_ten"},
                {"question", scale.question},
                {"at_0", scale.at_0},
                {"at_10", scale.at_10}};
    }
    Json operator()(const PaperTable& table) const {
        return {{"kind", "table"}, {"columns", table.columns}, {"rows", table.rows}};
    }
    Json operator()(const PaperContact& contact) const {
        return {{"kind", "contact"},
                {"who", contact.who},
                {"telephone", contact.telephone.empty() ? Json(nullptr) : Json(contact.telephone)}};
    }
};

const char* name_of(PaperReader reader) {
    switch (reader) {
        case PaperReader::client:
            return "client";
        case PaperReader::coach:
            return "coach";
        case PaperReader::prescriber:
            break;
    }
    return "prescriber";
}

}  // namespace

Json json_of(const Paper& paper) {
    Json blocks = Json::array();
    for (const PaperBlock& block : paper.blocks) {
        blocks.push_back(std::visit(BlockJson{}, block));
    }
    return {{"title", paper.title},        {"reader", name_of(paper.reader)},
            {"made", paper.made},          {"one_page", paper.one_page && !paper.may_go_on},
            {"blocks", std::move(blocks)}, {"foot", paper.foot}};
}

}  // namespace tracewright

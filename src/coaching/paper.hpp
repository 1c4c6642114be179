#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

namespace tracewright {

/// Who holds the paper in the hand: decides how large it is set.
enum class PaperReader { client, coach, prescriber };

struct PaperHeading {
    std::string text;
};

struct PaperSentence {
    std::string text;
    bool strong = false;
};

struct PaperList {
    std::vector<std::string> items;
};

/// A drawing, by its place among the figures that are given beside the paper when it is laid out.
/// What it says stands in a sentence of the paper.
struct PaperFigure {
    std::size_t place = 0;
};

/// Sentences in a frame of their own: first aid, whom to call.
struct PaperBox {
    std::string title;
    std::vector<std::string> sentences;
    bool first_aid = false;  ///< its numbers are no part of the message
};

/// A label and empty lines under it to write on.
struct RoomToWrite {
    std::string label;  ///< may be empty
    int lines = 1;
};

/// "How sure are you?", 0 to 10, one to be ringed with a pen.
struct ZeroToTen {
    std::string question;
    std::string at_0;   ///< "not at all"
    std::string at_10;  ///< "fully"
};

/// Dates, days or things to fill in. An empty cell is one to write in.
struct PaperTable {
    std::vector<std::string> columns;
    std::vector<double> shares;  ///< of the width, one for each column; they add up to 1
    std::vector<std::vector<std::string>> rows;
    double row_height = 0;  ///< at least, points: room for a pen
};

/// Whom to ring. No telephone known: a blank line is printed (safety rule 15).
struct PaperContact {
    std::string who;
    std::string telephone;
};

using PaperBlock = std::variant<PaperHeading, PaperSentence, PaperList, PaperFigure, PaperBox,
                                RoomToWrite, ZeroToTen, PaperTable, PaperContact>;

/// What stands on a paper, from top to bottom, as content alone: print and page lay out the same.
struct Paper {
    std::string title;
    PaperReader reader = PaperReader::client;
    std::string made;  ///< ISO 8601, kept in the file so that the same paper gives the same bytes
    std::vector<PaperBlock> blocks;
    std::string foot;        ///< at the foot of each page with its number; empty: neither
    bool one_page = true;    ///< must fit on one sheet ...
    bool may_go_on = false;  ///< ... and where it doesn't, goes on overleaf instead of not at all
};

/// What is read as running text: sentences, items of lists, boxes, labels over room to write.
std::vector<std::string> running_text(const Paper& paper);

/// The message: the same with headings, without first aid.
std::vector<std::string> message_of(const Paper& paper);

/// The contacts whose telephone number is a blank line, to tell the coach.
std::vector<std::string> contacts_without_number(const Paper& paper);

}  // namespace tracewright

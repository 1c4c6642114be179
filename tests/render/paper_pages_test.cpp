#include "render/paper_pages.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <unistd.h>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <regex>

using namespace tracewright;
using ::testing::AllOf;
using ::testing::ElementsAre;
using ::testing::Ge;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

namespace fs = std::filesystem;

Figure a_figure() {
    Figure figure;
    figure.width = 495;
    figure.height = 40;
    figure.title = "Nothing in particular";
    figure.alternative = "A bar.";
    figure.draw = [](Canvas& canvas) { canvas.rectangle(0, 0, 495, 30, Fill::high); };
    return figure;
}

/// One block of every kind.
Paper every_block() {
    Paper paper;
    paper.title = "A paper <of> everything";
    paper.made = "2026-03-09T08:00:00Z";
    paper.blocks = {
        PaperSentence{"The first sentence & no other.", true},
        PaperHeading{"A heading"},
        PaperList{{"one thing", "another"}},
        PaperFigure{0},
        PaperBox{"In a box", {"Its one sentence."}, true},
        RoomToWrite{"What do you think?", 2},
        ZeroToTen{"How sure are you?", "not at all", "fully"},
        PaperTable{{"day", "done"}, {0.5, 0.5}, {{"Mon 9 March", ""}, {"Tue 10 March", ""}}, 24},
        PaperContact{"Your clinic", ""},
        PaperContact{"Emergency", "112"},
    };
    return paper;
}

Paper of_sentences(int count, PaperReader reader = PaperReader::client) {
    Paper paper;
    paper.title = "Many sentences";
    paper.reader = reader;
    paper.made = "2026-03-09T08:00:00Z";
    for (int i = 0; i < count; ++i) {
        paper.blocks.emplace_back(PaperSentence{"This sentence stands on a line of its own."});
    }
    return paper;
}

std::string output_of(const std::string& command) {
    std::string text;
    FILE* pipe = ::popen(command.c_str(), "r");
    char buffer[4096];
    for (std::size_t n = 0; (n = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;) {
        text.append(buffer, n);
    }
    ::pclose(pipe);
    return text;
}

/// What a program of poppler tells of the file: "pdftotext FILE -".
std::string told(const std::string& pdf, std::string command) {
    const fs::path path =
        fs::temp_directory_path() / ("tracewright-paper-" + std::to_string(::getpid()) + ".pdf");
    std::ofstream(path, std::ios::binary) << pdf;
    command.replace(command.find("FILE"), 4, path.string());
    const std::string text = output_of(command + " 2>/dev/null");
    fs::remove(path);
    return text;
}

/// How high every word stands, as poppler reads it, points.
std::vector<double> heights_of_words(const std::string& pdf) {
    std::vector<double> sizes;
    const std::string words = told(pdf, "pdftotext -bbox FILE -");
    const std::regex word("yMin=\"([0-9.]+)\" xMax=\"[0-9.]+\" yMax=\"([0-9.]+)\"");
    for (std::sregex_iterator i(words.begin(), words.end(), word), end; i != end; ++i) {
        sizes.push_back(std::stod((*i)[2]) - std::stod((*i)[1]));
    }
    return sizes;
}

}  // namespace

TEST(PaperPages, every_block_is_on_the_page_and_on_the_print) {
    const std::vector<Figure> figures{a_figure()};
    const auto pdf = paper_pdf(every_block(), figures);
    ASSERT_TRUE(pdf) << pdf.error().sentence();
    const std::string text = told(*pdf, "pdftotext FILE -");
    const std::string html = paper_html(every_block(), figures);
    for (const char* words :
         {"The first sentence", "A heading", "another", "In a box", "Its one sentence.",
          "What do you think?", "How sure are you?", "not at all", "fully", "Tue 10 March",
          "Your clinic:", "Emergency: 112"}) {
        EXPECT_THAT(text, HasSubstr(words));
        EXPECT_THAT(html, HasSubstr(words));
    }
    EXPECT_THAT(html, HasSubstr("A paper &lt;of&gt; everything"));
    EXPECT_THAT(html, HasSubstr("<desc>A bar.</desc>"));
    EXPECT_THAT(html, AllOf(Not(HasSubstr("<script")), Not(HasSubstr("http-equiv")),
                            Not(HasSubstr("src="))));
}

TEST(PaperPages, a_contact_without_a_number_leaves_a_blank_and_is_told) {
    EXPECT_THAT(contacts_without_number(every_block()), ElementsAre("Your clinic"));
    EXPECT_THAT(paper_html(every_block(), std::vector{a_figure()}),
                HasSubstr("Your clinic: <span class=\"blank\">"));
}

TEST(PaperPages, the_same_paper_gives_the_same_bytes) {
    const std::vector<Figure> figures{a_figure()};
    EXPECT_EQ(*paper_pdf(every_block(), figures), *paper_pdf(every_block(), figures));
}

TEST(PaperPages, what_must_be_one_sheet_is_one_or_an_error) {
    int printed = 0;
    for (const int sentences : {1, 20, 34, 38, 60}) {
        const auto pdf = paper_pdf(of_sentences(sentences));
        if (!pdf) {
            EXPECT_GT(pdf.error().pages, 1);
            EXPECT_GT(sentences, 20);
            continue;
        }
        ++printed;
        EXPECT_THAT(told(*pdf, "pdfinfo FILE"), HasSubstr("Pages:           1\n"));
    }
    EXPECT_GE(printed, 3);
    EXPECT_FALSE(paper_pdf(of_sentences(60)));
    EXPECT_TRUE(paper_pdf(of_sentences(40, PaperReader::prescriber)));
}

TEST(PaperPages, several_sheets_where_the_paper_says_so) {
    Paper paper = of_sentences(90);
    paper.one_page = false;
    paper.foot = "Goes on overleaf.";
    const auto pdf = paper_pdf(paper);
    ASSERT_TRUE(pdf);
    const std::string text = told(*pdf, "pdftotext FILE -");
    EXPECT_THAT(text, HasSubstr("page 2"));
    EXPECT_THAT(text, HasSubstr("Goes on overleaf."));
}

// 12 points of this font stand 14.5 points high in poppler's boxes (from memory of its metrics:
// ascent 0.97, descent 0.24 of the size).
TEST(PaperPages, no_text_of_a_client_is_smaller_than_12_points) {
    constexpr double height_of_12_points = 12 * 1.2;
    for (const int sentences : {1, 20, 34}) {
        for (const double size :
             heights_of_words(paper_pdf(of_sentences(sentences)).value_or(""))) {
            EXPECT_THAT(size, Ge(height_of_12_points));
        }
    }
    const auto every = heights_of_words(*paper_pdf(every_block(), std::vector{a_figure()}));
    ASSERT_GT(every.size(), 30U);
    for (const double size : every) {
        EXPECT_THAT(size, Ge(height_of_12_points));
    }
}

TEST(PaperPages, a_figure_that_is_not_given_is_a_mistake) {
    EXPECT_THROW((void)paper_pdf(every_block()), std::out_of_range);
    EXPECT_THROW((void)paper_html(every_block()), std::out_of_range);
}

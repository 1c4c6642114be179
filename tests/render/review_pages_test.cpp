#include "render/review_pages.hpp"
#include "render/approved.hpp"

#include "findings/review_input_for_tests.hpp"
#include "render/figure.hpp"
#include "render/fonts.hpp"
#include "render/pdf_language.hpp"
#include "render/review_figures.hpp"
#include "render/theme.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

using namespace tracewright;
using namespace tracewright::testing;
using namespace std::chrono_literals;
using ::testing::HasSubstr;
using ::testing::Not;

namespace {

namespace fs = std::filesystem;

/// An invented fortnight with a very low, highs, a gap, LOW, a diary and texts that try the layout.
FirstReview invented_review() {
    auto readings = waves(14);
    dip(readings, midnight + 26h + 40min, 47min, 50);
    dip(readings, midnight + 90h, 2h, 265);
    dip(readings, midnight + 114h, 90min, 210);
    for (Reading& reading : readings) {
        if (reading.at >= midnight + 27h && reading.at < midnight + 27h + 15min) {
            reading = Reading{reading.at, mg(40), 5min, Limit::below};
        }
    }
    std::erase_if(readings, [](const Reading& r) {
        return r.at >= midnight + 130h && r.at < midnight + 136h;
    });
    ReviewInput input = input_of(std::move(readings));
    const auto add = [&](DiaryKind kind, std::chrono::seconds at, std::string text) -> DiaryEntry& {
        DiaryEntry& entry = input.diary.emplace_back();
        entry.kind = kind;
        entry.at = midnight + at;
        entry.text = std::move(text);
        return entry;
    };
    for (int day = 0; day < 14; ++day) {
        add(DiaryKind::meal, 24h * day + 8h,
            "Haferflockenbrei mit \xC3\x84pfeln & N\xC3\xBCssen <roh>")
            .carbohydrate_g = Amount{45, 0, false};
        add(DiaryKind::meal, 24h * day + 13h,
            "Kartoffel-Gem\xC3\xBCse-Auflauf, "
            "Donaudampfschifffahrtsgesellschaftskapit\xC3\xA4nsteller");
        add(DiaryKind::medicine, 24h * day + 8h, "metformin 500 mg");
        add(DiaryKind::movement, 24h * day + 19h, "walk").until =
            midnight + 24h * day + 19h + 25min;
        add(DiaryKind::sleep, 24h * day + 23h, "").until = midnight + 24h * day + 30h;
        add(DiaryKind::finger_prick, 24h * day + 7h, "").glucose = mg(118);
    }
    std::stable_sort(input.diary.begin(), input.diary.end(),
                     [](const DiaryEntry& a, const DiaryEntry& b) { return a.at < b.at; });
    return first_review(std::move(input));
}

const FirstReview& review() {
    static const FirstReview made = invented_review();
    return made;
}

/// Days without anything urgent: the page begins otherwise.
const FirstReview& calm_review() {
    static const FirstReview made = first_review(input_of(waves(14)));
    return made;
}

/// "<FEFF0041>": plain letters as a PDF's string of UTF-16.
std::string utf16(const std::string& text) {
    std::string hex = "<FEFF";
    for (const char c : text) {
        char digits[8];
        std::snprintf(digits, sizeof digits, "%04X", static_cast<unsigned>(c));
        hex += digits;
    }
    return hex + ">";
}

struct TemporaryFile {
    explicit TemporaryFile(const std::string& bytes) {
        path =
            fs::temp_directory_path() / ("tracewright-test-" + std::to_string(::getpid()) + ".pdf");
        std::ofstream(path, std::ios::binary) << bytes;
    }
    ~TemporaryFile() { fs::remove(path); }
    fs::path path;
};

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

std::size_t times_in(const std::string& text, const std::string& part) {
    std::size_t times = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
        ++times;
    }
    return times;
}

}  // namespace

TEST(ReviewPages, bear_each_caution_once) {
    const std::string html = review_html(review());
    for (const std::string& caution : review().cautions) {
        const bool also_at_top = caution.starts_with("Not an alarm");
        EXPECT_EQ(times_in(html, escaped_markup(caution)), also_at_top ? 2U : 1U) << caution;
    }
}

TEST(ReviewPages, very_low_stands_before_everything_but_the_last_readings_age) {
    const std::string html = review_html(review());
    const auto main = html.find("<main>");
    EXPECT_LT(html.find("The last reading was", main), html.find("Was glucose very low?", main));
    EXPECT_LT(html.find("Was glucose very low?", main), html.find("<svg", main));
}

TEST(ReviewPages, the_page_is_one_of_its_own_and_needs_no_script_or_network) {
    const std::string html = review_html(review());
    EXPECT_EQ(html.find("<script"), std::string::npos);
    EXPECT_EQ(html.find("src="), std::string::npos);
    EXPECT_EQ(html.find("url(http"), std::string::npos);
    EXPECT_THAT(html, HasSubstr("<html lang=\"en\">"));
    EXPECT_THAT(html, HasSubstr("&lt;roh&gt;"));
    EXPECT_EQ(html.find("<roh>"), std::string::npos);
}

TEST(ReviewPages, every_figure_has_a_text_and_its_data_as_a_table) {
    const std::string html = review_html(review());
    EXPECT_EQ(times_in(html, "<figure>"),
              19U);  // bar, usual day, meals by slot, 14 sheets, hours seen, intervals
    EXPECT_EQ(times_in(html, "<figcaption>"), 19U);
    EXPECT_EQ(times_in(html, "role=\"img\""), 20U);  // the bar broad and narrow
    EXPECT_EQ(times_in(html, " as a table</summary>"), 19U);
}

TEST(ReviewPages, the_same_review_gives_the_same_bytes) {
    EXPECT_EQ(review_html(review()), review_html(review()));
    EXPECT_EQ(review_pdf(review()), review_pdf(review()));
}

TEST(ReviewPages, a_review_without_readings_is_a_page_that_says_so) {
    const FirstReview empty = first_review(input_of({}));
    EXPECT_THAT(review_html(empty), HasSubstr("There is no reading"));
    EXPECT_TRUE(review_pdf(empty).starts_with("%PDF-1.5"));
}

TEST(ReviewPages, the_hours_bar_is_as_approved) {
    expect_approved(svg_of(hours_bar(review())), "hours-bar.svg");
}

TEST(ReviewPages, a_day_sheet_is_as_approved) {
    expect_approved(svg_of(day_sheet(review(), review().days[1])), "day-sheet.svg");
}

TEST(ReviewPages, the_words_of_the_review_are_as_approved) {
    std::string text = review().last_reading + "\n";
    for (const Finding& finding : review().findings) {
        text += "\n# " + finding.question + "\n" + finding.sentence + "\n";
        for (const Caveat& caveat : finding.caveats) {
            text += "- " + caveat.sentence + "\n";
        }
        text += finding.next.sentence.empty() ? "" : "> " + finding.next.sentence + "\n";
    }
    text += "\nSeen: " + review().one_thing_seen + "\nAsk: " + review().one_thing_to_ask +
            "\nNote: " + review().one_thing_to_note + "\n";
    for (const std::string& sentence : review().cannot_say) {
        text += "? " + sentence + "\n";
    }
    expect_approved(text, "first-review.txt");
}

TEST(ReviewPages, the_pdf_is_tagged_titled_and_its_fonts_are_embedded) {
    const TemporaryFile file(review_pdf(review()));
    const std::string info = output_of("pdfinfo " + file.path.string() + " 2>&1");
    if (info.find("Pages:") == std::string::npos) {
        GTEST_SKIP() << "pdfinfo (poppler-utils) is not here: " << info;
    }
    EXPECT_THAT(info, HasSubstr("Tagged:          yes"));
    EXPECT_THAT(info, HasSubstr("Title:           First review, 2 to 15 March 2026"));
    EXPECT_THAT(review_pdf(review()), HasSubstr("/Lang (en)"));
    const std::string structure = output_of("pdfinfo -struct-text " + file.path.string() + " 2>&1");
    for (const char* tag :
         {"H1", "H2", "H3", "P (block)", "Figure", "Table", "TR", "TH", "TD", "Caption"}) {
        EXPECT_THAT(structure, HasSubstr(tag));
    }
    EXPECT_THAT(structure, HasSubstr("Tue 3 March 02:40"));
    std::istringstream fonts(output_of("pdffonts " + file.path.string() + " 2>&1"));
    std::string line;
    std::getline(fonts, line);
    std::getline(fonts, line);
    int count = 0;
    while (std::getline(fonts, line)) {
        EXPECT_THAT(line, HasSubstr("yes yes")) << "not embedded as a subset";
        ++count;
    }
    EXPECT_GT(count, 0);
}

TEST(ReviewPages, no_text_of_the_pdf_lies_outside_the_page) {
    const TemporaryFile file(review_pdf(review()));
    const std::string boxes = output_of("pdftotext -bbox " + file.path.string() + " - 2>&1");
    if (boxes.find("<word") == std::string::npos) {
        GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
    }
    std::istringstream lines(boxes);
    int words = 0;
    for (std::string line; std::getline(lines, line);) {
        double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
        const auto at = line.find("<word");
        if (at != std::string::npos &&
            std::sscanf(line.c_str() + at,
                        "<word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\"", &x1, &y1, &x2,
                        &y2) == 4) {
            EXPECT_GE(x1, 20) << line;
            EXPECT_LE(x2, 595.28 - 20) << line;
            EXPECT_GE(y1, 0) << line;
            EXPECT_LE(y2, 841.89) << line;
            ++words;
        }
    }
    EXPECT_GT(words, 1000);
}

TEST(ReviewPages, a_page_is_numbered_and_says_that_it_is_no_alarm) {
    const TemporaryFile file(review_pdf(review()));
    const std::string text = output_of("pdftotext -layout " + file.path.string() + " - 2>&1");
    if (text.find("First review") == std::string::npos) {
        GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
    }
    EXPECT_GE(times_in(text, "Not an alarm"), times_in(text, "\f"));
    EXPECT_THAT(text, HasSubstr("page 1"));
}

// WCAG 2.2, 1.3.1: each heading is at most one level deeper than the one before.
TEST(ReviewPages, headings_of_the_page_never_skip_a_level) {
    for (const FirstReview* shown : {&review(), &calm_review()}) {
        const std::string html = review_html(*shown);
        int before = 0;
        int count = 0;
        for (std::size_t at = html.find("<h"); at != std::string::npos;
             at = html.find("<h", at + 1)) {
            const int level = html[at + 2] - '0';
            if (level >= 1 && level <= 6) {
                EXPECT_LE(level, before + 1) << html.substr(at, 60);
                EXPECT_TRUE(level > 1 || before == 0) << "a second title";
                before = level;
                ++count;
            }
        }
        EXPECT_GT(count, 20);
    }
}

// HTML, 3.2.6: an id stands once in a page; every link within the page leads somewhere.
TEST(ReviewPages, ids_are_unique_and_patterns_are_there) {
    const std::string html = review_html(review());
    std::set<std::string> ids;
    for (std::size_t at = html.find(" id=\""); at != std::string::npos;
         at = html.find(" id=\"", at + 1)) {
        EXPECT_TRUE(ids.insert(html.substr(at + 5, html.find('"', at + 5) - at - 5)).second);
    }
    int used = 0;
    for (std::size_t at = html.find("url(#"); at != std::string::npos;
         at = html.find("url(#", at + 1)) {
        EXPECT_EQ(ids.count(html.substr(at + 5, html.find(')', at) - at - 5)), 1U);
        ++used;
    }
    EXPECT_GT(used, 5);
}

TEST(ReviewPages, the_page_for_the_screen_is_well_formed) {
    const std::string html = review_html(review());
    std::vector<std::string> open;
    const std::set<std::string> without_end{"meta", "!DOCTYPE"};
    for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        const std::size_t end = html.find('>', at);
        const std::string inner = html.substr(at + 1, end - at - 1);
        std::string name = inner.substr(0, inner.find_first_of(" /", 1));
        if (inner.starts_with('/')) {
            ASSERT_FALSE(open.empty());
            ASSERT_EQ("/" + open.back(), inner) << html.substr(at > 80 ? at - 80 : 0, 160);
            open.pop_back();
        } else if (!inner.ends_with('/') && !without_end.contains(name)) {
            open.push_back(name);
        }
    }
    EXPECT_TRUE(open.empty());
}

TEST(ReviewPages, the_first_printed_page_holds_all_it_has_to) {
    for (const FirstReview* shown : {&review(), &calm_review()}) {
        const TemporaryFile file(review_pdf(*shown));
        const std::string text = output_of("pdftotext -l 1 -layout " + file.path.string() + " -");
        if (text.find("First review") == std::string::npos) {
            GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
        }
        for (const char* part :
             {"The last reading was", "What these days say", "24 h", "To take from this sitting",
              "What can't be said", "one look at a trace can't tell"}) {
            EXPECT_THAT(text, HasSubstr(part));
        }
    }
}

// Four things to tell somebody today, and the first page still holds what it has to: none of the
// four is put off, the rest is told in short and in full overleaf.
TEST(ReviewPages, many_urgent_findings_leave_the_first_page_one_page) {
    FirstReview many = invented_review();
    for (int i = 1; i <= 4; ++i) {
        Finding call;
        call.code = "escalation";
        call.question = "Same day, client and prescriber";
        call.sentence = "Call " + std::to_string(i) +
                        ": 2 days ago, first seen today: the last of 3 lows (below 70 mg/dL), each "
                        "within 7 days of the one before.";
        call.next.sentence = "Ring " + std::to_string(i) + ".";
        call.caveats.push_back({CaveatKind::few_days, "Aside " + std::to_string(i) + "."});
        many.findings.push_back(call);
    }
    const TemporaryFile file(review_pdf(many));
    const auto page = [&](int number) {
        const std::string n = std::to_string(number);
        return output_of("pdftotext -f " + n + " -l " + n + " -layout " + file.path.string() +
                         " -");
    };
    const std::string first = page(1);
    if (first.find("First review") == std::string::npos) {
        GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
    }
    for (const char* part :
         {"Tue 3 March 02:40", "Call 1:", "Ring 1.", "Call 4:", "Ring 4.",
          "To take from this sitting", "What can't be said", "one look at a trace can't tell"}) {
        EXPECT_THAT(first, HasSubstr(part));
    }
    const std::string second = page(2);
    EXPECT_THAT(second, HasSubstr("What these days say, in full"));
    EXPECT_THAT(second, HasSubstr("How much glucose varies"));
}

// Caveats are typed so that none is dropped: on paper too, those of what goes with it among them.
TEST(ReviewPages, every_caveat_stands_on_paper_and_on_the_page) {
    const auto words_only = [](const std::string& text) {
        std::string kept;
        for (const char c : text) {
            if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
                kept += c;
            }
        }
        return kept;
    };
    std::vector<std::string> caveats;
    for (const Finding& finding : review().findings) {
        for (const Caveat& caveat : finding.caveats) {
            caveats.push_back(caveat.sentence);
        }
    }
    std::size_t of_questions = 0;
    for (const StandingQuestion& question : review().goes_with.questions) {
        for (const Caveat& caveat : question.told.finding.caveats) {
            caveats.push_back(caveat.sentence);
            ++of_questions;
        }
    }
    ASSERT_GT(of_questions, 0U);
    const TemporaryFile file(review_pdf(review()));
    const std::string text = output_of("pdftotext " + file.path.string() + " - 2>&1");
    if (text.find("First review") == std::string::npos) {
        GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
    }
    const std::string paper = words_only(text);
    const std::string page = words_only(review_html(review()));
    for (const std::string& caveat : caveats) {
        EXPECT_THAT(paper, HasSubstr(words_only(caveat)));
        EXPECT_THAT(page, HasSubstr(words_only(caveat)));
    }
}

TEST(ReviewPages, name_the_zone_data_and_the_font_they_were_made_with) {
    EXPECT_THAT(font_and_version(), ::testing::MatchesRegex("Inter [0-9]+\\.[0-9]+"));
    EXPECT_THAT(review_html(review()), HasSubstr("; figures set in " + font_and_version() + "."));
    const TemporaryFile file(review_pdf(review()));
    const std::string text = output_of("pdftotext " + file.path.string() + " - 2>&1");
    if (text.find("First review") == std::string::npos) {
        GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
    }
    EXPECT_THAT(text, HasSubstr("; set in " + font_and_version() + "."));
}

// Cooked rice, in Chinese: the clients write as they speak. U+F0000 is nobody's letter.
TEST(ReviewPages, print_has_a_shape_for_chinese_and_says_where_it_has_none) {
    const std::string rice = "\xE7\xB1\xB3\xE9\xA5\xAD";
    const std::string nobodys = "\xF3\xB0\x80\x80";
    EXPECT_EQ(letters_without_shape(rice + " \xC3\xA4 a"), 0);
    EXPECT_EQ(letters_without_shape(nobodys + rice + nobodys), 2);
    for (const bool shapeless : {false, true}) {
        ReviewInput input = input_of(waves(2));
        DiaryEntry& meal = input.diary.emplace_back();
        meal.kind = DiaryKind::meal;
        meal.at = midnight + 8h;
        meal.text = rice + (shapeless ? nobodys : "");
        const TemporaryFile file(review_pdf(first_review(std::move(input))));
        const std::string text = output_of("pdftotext " + file.path.string() + " - 2>&1");
        if (text.find("First review") == std::string::npos) {
            GTEST_SKIP() << "pdftotext (poppler-utils) is not here";
        }
        EXPECT_THAT(text, HasSubstr(rice));
        EXPECT_EQ(text.find("1 of the diary's letters have no shape") != std::string::npos,
                  shapeless);
    }
}

TEST(ReviewPages, every_figure_of_the_pdf_has_its_text_to_be_read_aloud) {
    const std::string pdf = review_pdf(review());
    EXPECT_EQ(times_in(pdf, "<< /Alt <FEFF"), 19U);
    EXPECT_THAT(pdf, HasSubstr("<< /Alt " + utf16(hours_bar(review()).alternative)));
    EXPECT_THAT(pdf, HasSubstr("<< /Alt " + utf16(intervals_figure(review()).alternative)));
    const TemporaryFile file(pdf);
    const std::string info = output_of("pdfinfo " + file.path.string() + " 2>&1");
    EXPECT_THAT(info, Not(HasSubstr("Error")));
}

TEST(ReviewPages, of_ninety_days_the_last_ones_are_shown_and_that_is_said) {
    const FirstReview review = first_review(input_of(waves(90, 15min)));
    EXPECT_THAT(review_html(review), HasSubstr("The last 31 of 90 days are shown"));
    EXPECT_EQ(times_in(review_html(review), "<h3>Sat"), 5U);
    EXPECT_GT(review_pdf(review).size(), 100000U);
}

TEST(PdfLanguage, texts_that_are_not_as_many_as_the_figures_are_left_out) {
    const std::string pdf = review_pdf(first_review(input_of(waves(3))));
    EXPECT_EQ(times_in(with_language(pdf, "en", {"only one"}), "6F006E006C0079"), 0U);
}

TEST(PdfLanguage, a_file_whose_catalogue_is_not_found_comes_back_unchanged) {
    EXPECT_EQ(with_language("no pdf at all", "en"), "no pdf at all");
}

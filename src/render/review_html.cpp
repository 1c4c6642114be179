#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "render/fonts.hpp"
#include "render/measure_words.hpp"
#include "render/review_figures.hpp"
#include "render/review_pages.hpp"
#include "render/review_words.hpp"

#include <fmt/format.h>

namespace tracewright {

namespace {

constexpr const char* style = R"(
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#f4f3ef;color:#1f242a;font:1rem/1.55 Inter,"Noto Sans",sans-serif}
.patterns{position:absolute}
main{max-width:52rem;margin:0 auto;padding:2rem clamp(1rem,5vw,3.5rem);background:#fff}
h1{font-size:1.7rem;line-height:1.2;margin:0 0 .3rem}
h2{font-size:1.25rem;margin:2.6rem 0 .6rem;padding-top:.9rem;border-top:1px solid #cdd0d4}
h3{font-size:1rem;margin:1.5rem 0 .2rem;color:#164d5c}
p{margin:.35rem 0}
.age{font-weight:600}
.quiet{color:#585f69}
.lead h2{margin:0;padding:0;border:0;font-size:1.1rem;color:#254270}
.lead>p:first-of-type{font-weight:600}
.lead{border-left:5px solid #254270;padding:.2rem 0 .2rem 1rem;margin:1.2rem 0}
.next{margin-left:1rem;padding-left:.8rem;border-left:3px solid #cdd0d4}
ul{margin:.3rem 0 .3rem 1.1rem;padding:0}
figure{margin:1.2rem 0}
figure svg{width:100%;height:auto;display:block}
.narrow{display:none}
@media screen and (max-width:40rem){.broad{display:none}.narrow{display:block}
.many table{min-width:34rem}.many th[scope=row]{position:sticky;left:0;background:#fff;max-width:9rem}}
.drawn{overflow-x:auto}
.drawn svg{min-width:34rem}
.drawn:focus-visible,.wide:focus-visible{outline:3px solid #164d5c;outline-offset:2px}
figcaption{margin-bottom:.5rem}
details{margin:.4rem 0;font-size:.92rem}
summary{cursor:pointer;color:#164d5c}
summary:focus-visible,a:focus-visible{outline:3px solid #164d5c;outline-offset:2px}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:.88rem;margin:.5rem 0}
caption{text-align:left;color:#585f69;padding:.3rem 0}
th,td{text-align:left;vertical-align:top;padding:.28rem .6rem .28rem 0;border-bottom:1px solid #e2e4e6}
.three dt{font-weight:600;margin-top:.6rem}
.three dd{margin:0}
@media print{body{background:#fff;font-size:10pt}main{padding:0;max-width:none}details{display:none}.drawn,.wide{overflow:visible}.drawn svg{min-width:0}
figure,table,.finding{break-inside:avoid}h2{break-after:avoid}}
)";

std::string esc(std::string_view text) {
    return escaped_markup(text);
}

std::string paragraph(const std::string& text, const char* css = nullptr) {
    return css == nullptr ? "<p>" + esc(text) + "</p>\n"
                          : fmt::format("<p class=\"{}\">{}</p>\n", css, esc(text));
}

std::string table(const std::string& caption, const std::vector<std::string>& columns,
                  const std::vector<std::vector<std::string>>& rows) {
    // With more columns than a phone is wide for, it scrolls by itself there, the row's name
    // staying.
    std::string html =
        fmt::format("<div class=\"wide{}\" role=\"region\" tabindex=\"0\" aria-label=\"",
                    columns.size() > 3 ? " many" : "") +
        "table: " + esc(caption) + "\"><table><caption>" + esc(caption) + "</caption><thead><tr>";
    for (const std::string& column : columns) {
        html += "<th scope=\"col\">" + esc(column) + "</th>";
    }
    html += "</tr></thead><tbody>\n";
    for (const auto& row : rows) {
        html += "<tr>";
        for (std::size_t i = 0; i < row.size(); ++i) {
            html += (i == 0 ? "<th scope=\"row\">" : "<td>") + esc(row[i]) +
                    (i == 0 ? "</th>" : "</td>");
        }
        html += "</tr>\n";
    }
    return html + "</tbody></table></div>\n";
}

// Wider than a phone, so that its words stay legible: it scrolls by itself there.
std::string drawn(const Figure& figure) {
    return "<div class=\"drawn\" role=\"region\" tabindex=\"0\" aria-label=\"" + esc(figure.title) +
           "\">" + svg_of(figure, false) + "</div>";
}

std::string with_text_and_table(const std::string& drawing, const Figure& figure) {
    std::string html =
        "<figure><figcaption>" + esc(figure.alternative) + "</figcaption>" + drawing + "\n";
    if (!figure.rows.empty()) {
        html += "<details><summary>" + esc(figure.title) + " as a table</summary>" +
                table(figure.title, figure.columns, figure.rows) + "</details>";
    }
    return html + "</figure>\n";
}

std::string figure_html(const Figure& figure) {
    return with_text_and_table(drawn(figure), figure);
}

// The bar is seen whole on a phone too: one drawing for each width, of which one shows.
std::string hours_bar_html(const FirstReview& review) {
    const Figure bar = hours_bar(review);
    return with_text_and_table("<div class=\"broad\">" + svg_of(bar, false) +
                                   "</div><div class=\"narrow\">" +
                                   svg_of(hours_bar(review, 300), false) + "</div>",
                               bar);
}

std::string finding_html(const Finding& finding) {
    const bool leads = urgent(finding);
    std::string html =
        fmt::format("<section class=\"finding{0}\"><{1}>{2}</{1}>\n", leads ? " lead" : "",
                    leads ? "h2" : "h3", esc(finding.question));
    html += paragraph(finding.sentence);
    if (!finding.caveats.empty()) {
        html += "<ul>";
        for (const Caveat& caveat : finding.caveats) {
            html += "<li>" + esc(caveat.sentence) + "</li>";
        }
        html += "</ul>\n";
    }
    if (!finding.next.sentence.empty()) {
        html += paragraph(finding.next.sentence, "next");
    }
    return html + "<details><summary>How this was found</summary>" + paragraph(method_of(finding)) +
           "</details></section>\n";
}

std::string measures_html(const std::string& caption, const Measures& measures,
                          const ReviewInput& input) {
    return table(caption, measure_columns, measure_rows(measures, input.goals, input.unit));
}

std::string marks_html(const FirstReview& review) {
    if (review.marks.empty()) {
        return {};
    }
    std::vector<std::vector<std::string>> rows;
    for (const Mark& mark : review.marks) {
        rows.push_back({day_and_time(review.input.zones.wall_time(mark.stretch.from),
                                     review.input.zones.writing()),
                        name_of(mark.reason), hours_and_minutes(mark.stretch.length()), mark.seen});
    }
    return table("Suspect stretches: marked, still counted",
                 {"from", "mark", "length", "what was seen"}, rows);
}

std::string bullets(const std::vector<std::string>& lines) {
    std::string html = "<ul>";
    for (const std::string& line : lines) {
        html += "<li>" + esc(line) + "</li>";
    }
    return html + "</ul>\n";
}

std::string goes_with_html(const FirstReview& review) {
    const WhatGoesWithIt& goes_with = review.goes_with;
    std::string html = "<h2>What goes with it</h2>\n";
    if (!goes_with.none_because.empty()) {
        html += paragraph(goes_with.none_because);
    }
    if (!goes_with.questions.empty()) {
        html += paragraph(standing_questions_note, "quiet") + bullets(standing_lines(review));
        if (const auto caveats = standing_caveats(review); !caveats.empty()) {
            html += std::string("<h3>") + standing_caveats_heading + "</h3>\n" + bullets(caveats);
        }
    }
    if (review.input.foods_left_off) {
        html += paragraph(foods_left_off_note);
    }
    if (goes_with.meals && !goes_with.meals->occasions.empty()) {
        html += "<h3>Meals</h3>\n" + figure_html(meals_by_slot_figure(review));
        const Figure foods = foods_figure(review);
        html += (foods.rows.empty() ? "" : figure_html(foods)) + bullets(meal_lines(review));
    }
    if (const auto rises = rises_to_ask_about(review); !rises.empty()) {
        html += "<h3>Ask about: a rise without an entry</h3>\n" + bullets(rises);
    }
    return html;
}

}  // namespace

std::string review_html(const FirstReview& review) {
    std::string html =
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
        "content=\"width=device-width,initial-scale=1\"><title>" +
        esc(review_title(review)) + "</title><style>" + style + "</style></head><body>" +
        svg_patterns() + "<main>\n<h1>" + esc(review_title(review)) + "</h1>\n";
    html += paragraph(review.last_reading, "age");
    html += paragraph("Not an alarm. Don't rely on this page to be woken or warned.", "quiet");

    for (const Finding& finding : review.findings) {
        if (urgent(finding)) {
            html += finding_html(finding);
        }
    }
    html += "<h2>What these days say</h2>\n";
    if (!review.trace.readings.empty()) {
        html += hours_bar_html(review);
    }
    for (const Finding& finding : review.findings) {
        if (!urgent(finding)) {
            html += finding_html(finding);
        }
    }
    html += "<h2>To take from this sitting</h2><dl class=\"three\"><dt>One thing seen</dt><dd>" +
            esc(review.one_thing_seen) + "</dd><dt>One thing to ask</dt><dd>" +
            esc(review.one_thing_to_ask) + "</dd><dt>One thing to note next time</dt><dd>" +
            esc(review.one_thing_to_note) + "</dd></dl>\n";
    html += "<h2>What can't be said</h2><ul>";
    for (const std::string& sentence : not_yet_said(review)) {
        html += "<li>" + esc(sentence) + "</li>";
    }
    html += "</ul>\n";
    if (review.trace.readings.empty()) {
        html += "</main></body></html>\n";
        return html;
    }

    html += "<h2>When in the day: the usual day</h2>\n" + figure_html(usual_day_figure(review)) +
            paragraph("The ambulatory glucose profile: all days laid over one another, " +
                          review.usual_day.smoothing + ". No single day ran like this.",
                      "quiet");

    const std::size_t first =
        review.days.size() > most_day_sheets ? review.days.size() - most_day_sheets : 0;
    html += goes_with_html(review) + "<h2>Day sheets</h2>\n";
    if (first > 0) {
        html += paragraph(
            fmt::format("The last {} of {} days are shown.", most_day_sheets, review.days.size()));
    }
    for (std::size_t d = first; d < review.days.size(); ++d) {
        html += "<h3>" + esc(full_date(review.days[d].day.date, review.input.zones.writing())) +
                "</h3>\n" + figure_html(day_sheet(review, review.days[d]));
    }

    html += "<h2>Can these data be trusted</h2>\n" + figure_html(hours_seen(review)) + "<ul>";
    for (const Sufficiency& answer : review.sufficiency) {
        html += "<li>" + esc(answer.sentence) + "</li>";
    }
    html += "</ul>\n" + marks_html(review);

    html += "<h2>Measures</h2>\n" +
            paragraph(
                "Each with its 95 % interval and the days behind it; the day is the unit of "
                "evidence.",
                "quiet") +
            figure_html(intervals_figure(review));
    const std::string beyond = beyond_limit_sentence(review.measures);
    if (!beyond.empty()) {
        html += paragraph(beyond, "quiet");
    }
    html += measures_html("The whole window", review.measures, review.input);
    for (const auto& [name, measures] : review.parts) {
        html += "<details><summary>" + esc(name) + "</summary>" +
                measures_html(name, measures, review.input) + "</details>\n";
    }
    html += "<h2>Cautions</h2><ul>";
    for (const std::string& caution : review.cautions) {
        html += "<li>" + esc(caution) + "</li>";
    }
    return html + "</ul>\n" +
           paragraph(
               "Zone data " + zone_data_version() + "; figures set in " + font_and_version() + ".",
               "quiet") +
           "</main></body></html>\n";
}

}  // namespace tracewright

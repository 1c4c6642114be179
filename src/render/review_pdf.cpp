#include "findings/review_findings.hpp"
#include "findings/wording.hpp"
#include "render/fonts.hpp"
#include "render/measure_words.hpp"
#include "render/pdf_document.hpp"
#include "render/review_figures.hpp"
#include "render/review_pages.hpp"
#include "render/review_words.hpp"
#include "render/theme.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace tracewright {

namespace {

std::string created(const FirstReview& review) {
    const auto day = std::chrono::floor<std::chrono::days>(review.input.as_of);
    const std::chrono::year_month_day ymd{day};
    const std::chrono::hh_mm_ss time{review.input.as_of - day};
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(ymd.year()),
                       static_cast<unsigned>(ymd.month()), static_cast<unsigned>(ymd.day()),
                       time.hours().count(), time.minutes().count(), time.seconds().count());
}

void add_finding(PdfDocument& pdf, const Finding& finding) {
    pdf.heading(urgent(finding) ? 2 : 3, finding.question);
    pdf.paragraph(finding.sentence, 9.5, urgent(finding));
    std::vector<std::string> caveats;
    for (const Caveat& caveat : finding.caveats) {
        caveats.push_back(caveat.sentence);
    }
    pdf.bullets(caveats);
    if (!finding.next.sentence.empty()) {
        pdf.paragraph(finding.next.sentence, 8.5, false, Ink::accent);
    }
}

// What happened and whom to tell: as much as may never be put off to another page.
void add_urgent_in_short(PdfDocument& pdf, const Finding& finding) {
    pdf.paragraph(finding.sentence, 9.5, true);
    if (!finding.next.sentence.empty()) {
        pdf.paragraph(finding.next.sentence, 8.5, false, Ink::accent);
    }
}

// The findings as they are printed: the urgent ones first; what goes with it has a page of its own.
std::vector<const Finding*> in_order(const FirstReview& review) {
    std::vector<const Finding*> findings;
    for (const Finding& finding : review.findings) {
        if (!of_what_goes_with_it(review, finding)) {
            findings.push_back(&finding);
        }
    }
    std::ranges::stable_partition(findings,
                                  [](const Finding* finding) { return urgent(*finding); });
    return findings;
}

// The first `whole` findings with all that belongs to them, the others by their sentence.
void add_first_page(PdfDocument& pdf, const FirstReview& review, std::size_t whole) {
    const std::vector<const Finding*> findings = in_order(review);
    pdf.heading(1, review_title(review));
    pdf.paragraph(review.last_reading, 10.5, true);
    std::size_t i = 0;
    for (; i < findings.size() && urgent(*findings[i]); ++i) {
        if (i < whole) {
            add_finding(pdf, *findings[i]);
        } else if (i == whole) {
            pdf.heading(2, findings[i]->question);
            add_urgent_in_short(pdf, *findings[i]);
        } else {
            add_urgent_in_short(pdf, *findings[i]);
        }
    }
    pdf.heading(2, "What these days say");
    if (!review.trace.readings.empty()) {
        pdf.figure(hours_bar(review), false);
    }
    for (; i < std::min(whole, findings.size()); ++i) {
        add_finding(pdf, *findings[i]);
    }
    std::vector<std::string> sentences;
    for (; i < findings.size(); ++i) {
        sentences.push_back(findings[i]->sentence);
    }
    if (!sentences.empty()) {
        pdf.heading(3, "In short; in full on the next page");
        pdf.bullets(sentences);
    }
    std::vector<std::string> goes_with;
    for (const Finding& finding : review.findings) {
        if (of_what_goes_with_it(review, finding)) {
            goes_with.push_back(finding.sentence);
        }
    }
    if (!goes_with.empty()) {
        pdf.heading(3, "What goes with it?");
        pdf.bullets(goes_with);
    }
    pdf.heading(2, "To take from this sitting");
    pdf.paragraph("Seen: " + review.one_thing_seen, 9.5);
    pdf.paragraph("To ask: " + review.one_thing_to_ask, 9.5);
    pdf.paragraph("To note next time: " + review.one_thing_to_note, 9.5);
    pdf.heading(2, "What can't be said");
    pdf.bullets(not_yet_said(review));
}

PdfDocument document(const FirstReview& review, PdfDocument::Output output) {
    return {review_title(review), created(review),
            review.last_reading + " Not an alarm: don't rely on this page to be woken or warned.",
            output};
}

// How the first page is set.
struct FirstPage {
    double scale = 1;       // of its text
    std::size_t whole = 0;  // findings printed whole; the others follow in full on the next page
};

bool is_one_page(PdfDocument& trial, const FirstReview& review, const FirstPage& set) {
    trial.try_again();
    trial.set_scale(set.scale);
    add_first_page(trial, review, set.whole);
    return trial.pages() == 1;
}

// As many findings whole as the first page holds, then the largest text that holds them. A page
// that doesn't hold even the sentences is set small and goes on overleaf.
FirstPage first_page(const FirstReview& review) {
    constexpr double smallest = 0.92;
    PdfDocument trial = document(review, PdfDocument::Output::trial);
    const auto one_page = [&](double scale, std::size_t whole) {
        return is_one_page(trial, review, {scale, whole});
    };
    std::size_t whole = in_order(review).size();
    if (!one_page(smallest, whole)) {
        std::size_t fits = 0;
        while (whole - fits > 1) {
            const std::size_t middle = (fits + whole) / 2;
            (one_page(smallest, middle) ? fits : whole) = middle;
        }
        whole = fits;
    }
    for (const double scale : {1.0, 0.96}) {
        if (one_page(scale, whole)) {
            return {scale, whole};
        }
    }
    return {smallest, whole};
}

void add_findings_in_full(PdfDocument& pdf, const FirstReview& review, std::size_t from) {
    const std::vector<const Finding*> findings = in_order(review);
    if (from >= findings.size()) {
        return;
    }
    pdf.new_page();
    pdf.heading(2, "What these days say, in full");
    for (std::size_t i = from; i < findings.size(); ++i) {
        add_finding(pdf, *findings[i]);
    }
}

void add_usual_day(PdfDocument& pdf, const FirstReview& review) {
    pdf.new_page();
    pdf.heading(2, "When in the day: the usual day");
    pdf.figure(usual_day_figure(review, 330));
    pdf.paragraph("The ambulatory glucose profile: all days laid over one another, " +
                      review.usual_day.smoothing + ". No single day ran like this.",
                  9, false, Ink::quiet);
    pdf.heading(3, "By parts of the day and the week");
    const PartsTable parts = parts_table(review.parts, review.input.goals, review.input.unit);
    pdf.table(parts.columns, parts.shares, parts.rows);
    pdf.paragraph(
        "Value, and under it where it may truly lie (95 % interval). All measures of "
        "each part stand in the page for the screen.",
        8.5, false, Ink::quiet);
}

void add_goes_with(PdfDocument& pdf, const FirstReview& review) {
    const WhatGoesWithIt& goes_with = review.goes_with;
    pdf.new_page();
    pdf.heading(2, "What goes with it");
    if (!goes_with.none_because.empty()) {
        pdf.paragraph(goes_with.none_because, 9.5);
    }
    for (const Finding& finding : review.findings) {
        if (of_what_goes_with_it(review, finding)) {
            add_finding(pdf, finding);
        }
    }
    if (!goes_with.questions.empty()) {
        pdf.paragraph(standing_questions_note, 8.5, false, Ink::quiet);
        pdf.bullets(standing_lines(review));
        if (const auto caveats = standing_caveats(review); !caveats.empty()) {
            pdf.heading(3, standing_caveats_heading);
            pdf.bullets(caveats);
        }
    }
    if (review.input.foods_left_off) {
        pdf.paragraph(foods_left_off_note, 9.5);
    }
    if (goes_with.meals && !goes_with.meals->occasions.empty()) {
        const Figure by_slot = meals_by_slot_figure(review);
        pdf.need(by_slot.height + 60);
        pdf.heading(3, "Meals by slot, from the first bite");
        pdf.figure(by_slot);
        const Figure foods = foods_figure(review);
        pdf.need(foods.height + 60);
        pdf.heading(3, "Meals compared");
        if (!foods.rows.empty()) {
            pdf.figure(foods, false);
        }
        pdf.bullets(meal_lines(review));
    }
    if (const auto rises = rises_to_ask_about(review); !rises.empty()) {
        pdf.heading(3, "Ask about: a rise without an entry");
        pdf.bullets(rises);
    }
}

void add_measures(PdfDocument& pdf, const FirstReview& review) {
    const Figure intervals = intervals_figure(review);
    pdf.need(intervals.height + 80);
    pdf.heading(2, "Measures");
    pdf.paragraph(
        "The dot is what these days gave, the line where it may truly lie (95 % "
        "interval); hatched where that can't be told. The day is the unit of evidence.",
        9, false, Ink::quiet);
    pdf.figure(intervals, false);
    const std::string beyond = beyond_limit_sentence(review.measures);
    if (!beyond.empty()) {
        pdf.paragraph(beyond, 9, false, Ink::quiet);
    }
    pdf.table(measure_columns, {0.34, 0.14, 0.2, 0.06, 0.26},
              measure_rows(review.measures, review.input.goals, review.input.unit));
    pdf.heading(3, "How each answer was found");
    pdf.bullets(methods_of(review));
}

int shapeless_letters(const FirstReview& review) {
    int letters = 0;
    for (const DiaryEntry& entry : review.input.diary) {
        letters += letters_without_shape(entry.text);
    }
    return letters;
}

void add_days(PdfDocument& pdf, const FirstReview& review) {
    pdf.new_page();
    pdf.heading(2, "Day sheets");
    const std::size_t first =
        review.days.size() > most_day_sheets ? review.days.size() - most_day_sheets : 0;
    if (first > 0) {
        pdf.paragraph(
            fmt::format("The last {} of {} days are shown.", most_day_sheets, review.days.size()));
    }
    const int without_shape = shapeless_letters(review);
    if (without_shape > 0) {
        pdf.paragraph(
            fmt::format("{} of the diary's letters have no shape in the fonts installed "
                        "here and are printed as boxes; the page for the screen shows them.",
                        without_shape));
    }
    for (std::size_t d = first; d < review.days.size(); ++d) {
        const Figure sheet = day_sheet(review, review.days[d]);
        pdf.need(sheet.height + 40);  // heading, sentence and sheet stay together
        pdf.heading(3, full_date(review.days[d].day.date, review.input.zones.writing()));
        pdf.paragraph(review.days[d].sentence, 9);
        pdf.figure(sheet, false);
    }
}

void add_trust(PdfDocument& pdf, const FirstReview& review) {
    pdf.heading(2, "Can these data be trusted");
    pdf.figure(hours_seen(review));
    std::vector<std::string> answers;
    for (const Sufficiency& answer : review.sufficiency) {
        answers.push_back(answer.sentence);
    }
    pdf.bullets(answers);
}

void add_marks(PdfDocument& pdf, const FirstReview& review) {
    if (review.marks.empty()) {
        return;
    }
    pdf.heading(3, "Suspect stretches: marked, still counted");
    std::vector<std::vector<std::string>> rows;
    for (const Mark& mark : review.marks) {
        rows.push_back({day_and_time(review.input.zones.wall_time(mark.stretch.from),
                                     review.input.zones.writing()),
                        name_of(mark.reason), hours_and_minutes(mark.stretch.length()), mark.seen});
    }
    pdf.table({"from", "mark", "length", "what was seen"}, {0.22, 0.2, 0.13, 0.45}, rows);
}

}  // namespace

std::string review_pdf(const FirstReview& review) {
    PdfDocument pdf = document(review, PdfDocument::Output::file);
    const FirstPage first = first_page(review);
    pdf.set_scale(first.scale);
    add_first_page(pdf, review, first.whole);
    pdf.set_scale(1);
    add_findings_in_full(pdf, review, first.whole);
    if (!review.trace.readings.empty()) {
        // Where the sentences need a second page, what they rest on fills it.
        const bool spilled = pdf.pages() > 1;
        if (spilled) {
            add_trust(pdf, review);
        }
        add_usual_day(pdf, review);
        add_goes_with(pdf, review);
        add_days(pdf, review);
        pdf.new_page();
        if (!spilled) {
            add_trust(pdf, review);
        }
        add_marks(pdf, review);
        add_measures(pdf, review);
    }
    pdf.heading(2, "Cautions");
    pdf.bullets(review.cautions);
    pdf.paragraph("Zone data " + zone_data_version() + "; set in " + font_and_version() + ".", 8,
                  false, Ink::quiet);
    return pdf.bytes();
}

}  // namespace tracewright

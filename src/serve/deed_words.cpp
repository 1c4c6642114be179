#include "serve/deed_words.hpp"

#include <algorithm>
#include <array>

namespace tracewright {

namespace {

using Worded = std::pair<std::string_view, std::string_view>;

constexpr auto known = std::to_array<Worded>({
    // The practice.
    {"practice_made", "made the practice"},
    {"signed_in", "signed in"},
    {"passphrase_changed", "set another passphrase for the practice"},
    {"coach_added", "added a coach"},
    {"coach_changed", "changed what a coach may do or is called"},
    {"coach_passphrase_changed", "set a coach's own passphrase"},
    {"backup_made", "made a backup"},
    {"recovery_key_changed", "made a new recovery key; the one before opens the practice no more"},
    {"recovery_key_opened", "tried the recovery key: it opens the practice"},
    {"recovery_key_refused", "tried a recovery key: it does not open the practice"},
    {"reminder_rules_changed", "changed when there are reminders"},
    {"writing_changed", "changed how the practice writes dates, times or glucose"},
    {"caseload_seen", "looked at the list of clients"},
    {"audit_seen", "looked at who did what"},
    // Who a client is.
    {"client_added", "took a client on"},
    {"client_changed", "changed what is known of the client"},
    {"client_seen", "opened the client"},
    {"client_exported", "took a copy of what is kept of the client"},
    {"client_erased", "erased a client"},
    // What is brought in, and how far it goes.
    {"import_stored", "kept a file or diary entries"},
    {"import_known_already", "brought in what was there already"},
    {"import_held", "brought in a file that waits for an answer"},
    {"import_undone", "took back what was brought in last"},
    {"imports_seen", "looked at what was brought in"},
    {"wear_changed", "told how a sensor sat or ended"},
    {"wear_chosen", "chose which of two sensors is counted"},
    {"wear_choice_taken_back", "took back which of two sensors is counted"},
    {"stretch_marked", "marked a stretch as suspect"},
    {"stretch_counted", "had a marked stretch counted after all"},
    {"stretch_taken_back", "took back what was told of a stretch"},
    {"trust_seen", "looked at what can be trusted"},
    {"sensor_looked_at", "looked at what is known of the sensor"},
    // The days.
    {"days_seen", "looked at the list of days"},
    {"day_seen", "looked at a day"},
    {"trace_seen", "looked at a trace"},
    {"diary_seen", "looked at the diary"},
    {"diary_corrected", "corrected a diary entry"},
    {"diary_struck_out", "struck out a diary entry"},
    {"food_kept", "told of a food of the client"},
    {"food_forgotten", "took out a food of the client"},
    {"meal_photo_added", "added a photo of a meal"},
    {"meal_photo_removed", "removed a photo of a meal"},
    {"photos_seen", "looked at the list of photos"},
    {"photo_seen", "looked at a photo"},
    {"meals_looked_at", "looked at meals"},
    // What is said, agreed and answered.
    {"review_made", "looked at the review"},
    {"review_seen", "looked at the review"},  // a reader: no coach's review
    {"measures_seen", "looked at measures"},
    {"finding_kept", "kept a finding"},
    {"question_asked", "asked what goes with what"},
    {"notes_seen", "looked at notes"},
    {"note_added", "wrote a note"},
    {"promises_seen", "looked at promises"},
    {"promise_made", "made a promise"},
    {"promise_kept", "kept a promise"},
    {"escalations_put", "came upon something that waits for an answer"},
    {"escalation_withdrawn", "no longer found what had waited for an answer"},
    {"escalations_seen", "looked at what waits for an answer"},
    {"escalation_acknowledged", "answered what waited"},
    {"plan_looked_at", "looked at what was agreed"},
    {"before_after_looked_at", "looked at before and after"},
    {"labs_looked_at", "looked at laboratory results"},
    {"story_looked_at", "looked at the story so far"},
    // Trials.
    {"trial_kept", "drew a trial"},
    {"trial_day_told", "told what was done on a day of a trial"},
    {"trial_stopped", "stopped a trial"},
    {"trial_looked_at", "looked at trials"},
    {"trial_read", "read how a trial ended"},
    // Papers, and what others see.
    {"paper_made", "had a paper made"},
    {"handout_made", "had a handout made"},
    {"handout_made_with_numbers", "had a handout made with numbers, for a reason told"},
    {"talk_sheet_made", "had a talk sheet made"},
    {"letter_made", "had a letter to the prescriber made"},
    {"start_page_made", "had a start page made"},
    {"diary_sheet_made", "had diary sheets made"},
    {"explaining_pages_made", "had explaining pages made"},
    {"share_given", "gave a share"},
    {"share_revoked", "revoked a share"},
    {"shares_seen", "looked at the shares"},
    {"shared_page_made", "wrote a page to hand over"},
});

}  // namespace

std::string_view words_of_deed(std::string_view deed) {
    const auto found = std::ranges::find(known, deed, &Worded::first);
    return found == known.end() ? deed : found->second;
}

std::span<const Worded> worded_deeds() {
    return known;
}

}  // namespace tracewright

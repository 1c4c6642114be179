#pragma once

namespace tracewright {

/// Every sentence of the handout, in one language. In braces what is filled in: {0} first. Read
/// aloud, and at most grade 6 (reading_grade): a test tries all of them in all variants.
struct HandoutWords {
    const char* title = "Your days with the sensor";
    const char* for_whom = "For {0}. Made on {1}.";
    const char* for_nobody_named = "Made on {0}.";
    const char* last_reading = "Your last reading was on {0}, {1}. We can't know what came after.";
    const char* no_reading = "We have no readings of you yet.";

    const char* today = "today";
    const char* yesterday = "yesterday";
    const char* some_days_ago = "some days ago";
    const char* more_than_a_week_ago = "more than a week ago";
    const char* more_than_a_month_ago = "more than a month ago";

    const char* at_night = "at night";
    const char* in_the_morning = "in the morning";
    const char* in_the_afternoon = "in the afternoon";
    const char* in_the_evening = "in the evening";

    const char* read_first = "Please read this first";
    const char* very_low = "On {0}, {1}, your glucose was very low. Ring your clinic today.";
    const char* very_low_answered =
        "On {0}, {1}, your glucose was very low. If it comes again, ring your clinic that same "
        "day.";
    const char* very_high = "On {0} your glucose was very high. Ring your clinic today.";
    const char* can_be_an_emergency =
        "On {0} you had a sign that needs help fast. If you still feel ill, call for help now. If "
        "not, ring your clinic today.";
    const char* same_day = "On {0} something came up that your clinic must know. Ring them today.";
    const char* this_week =
        "Your clinic needs to hear from you this week. Your coach has a letter for them.";

    const char* good_thing = "One good thing";
    const char* best_day = "On {0} you were in range for longer than on all other days.";
    const char* wore = "You wore your sensor most of the time. That helps us both.";
    const char* wrote = "You wrote in your diary on most days. That helps us both.";
    const char* came = "You took time to look at your days. That is a good start.";

    const char* bar =
        "The bar is one day and one night. The parts show how long you spent in each.";
    const char* mark_your_day =
        "The bar is one day and one night. Put a cross where your change fits.";
    const char* night = "night";
    const char* morning = "morning";
    const char* afternoon = "afternoon";
    const char* evening = "evening";

    const char* change = "One change";
    const char* what = "What: ";
    const char* when = "When: ";
    const char* where = "Where: ";
    const char* how_often = "How often: ";
    const char* if_not = "If it can't be done: ";
    const char* stop_when = "Stop if: ";
    const char* how_checked = "How we check: ";
    const char* check_on = "We look at it with you on {0}.";
    const char* check_next = "We look at it with you when we next meet.";
    const char* no_change =
        "We have not agreed a change yet. What would you like to try, and when?";
    const char* change_waits = "Your coach will talk with you and your clinic first.";
    const char* talk_first = "Your coach will talk with you about the next step.";
    const char* clinic_leads =
        "Your maternity or diabetes clinic leads. We set no goal and no plan here.";

    const char* call = "When to call whom";
    const char* call_now =
        "Call for help now if you pass out, have a fit or feel confused. Do the same for chest "
        "pain, or fast and deep breaths. Do the same if you can't keep drinks down, have very high "
        "ketones, or are very high and drowsy.";
    const char* call_now_ketones =
        "Feel sick, throw up, belly hurts, short of breath? Call for help now, at any glucose.";
    const char* call_today =
        "Ring your clinic today if you were very low, or low more than once in a week. Do the same "
        "if you are very high, are ill for more than a day, or throw up or have loose stools for "
        "hours.";
    const char* local_first = "What your clinic has told you comes first.";
    const char* clinic = "Your clinic";

    const char* cautions =
        "This page is for our talks. It is not a medical device or medical advice. A sensor can be "
        "wrong: if it does not fit how you feel, test your finger. Only your prescriber changes "
        "your medicines. This is no alarm: it can't wake or warn you.";
};

inline constexpr HandoutWords english_handout{};

}  // namespace tracewright

#include "cli/kept_trials.hpp"

#include "cli/json_text.hpp"
#include "cli/trial_record.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_calendar_page.hpp"
#include "findings/wording.hpp"
#include "render/trial_calendar_file.hpp"
#include "store/whole_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <ostream>

namespace tracewright {

namespace {

Exit refuse(const Streams& streams, const std::string& sentence, Exit exit = Exit::wrong_usage) {
    streams.err << "tracewright: " << sentence << "\n";
    return exit;
}

CivilDate today_of(const ClientOfChange& client) {
    return client.input.zones.date_at(client.input.as_of);
}

// What has closed a trial since it was drawn (safety rules 7 to 12).
std::vector<Gate> gates_since(const KeptTrial& kept, const ClientOfChange& client) {
    const MedicineTimeline medicines = client_medicines(client.facts, client.input.zones);
    return gates_before_trial_papers(kept.trial, care_of(client, medicines));
}

Json json_of_kept(const KeptTrial& kept, const ClientOfChange& client) {
    const CivilDate today = today_of(client);
    Json days = Json::array();
    for (const CivilDate day : not_told(kept, today)) {
        days.push_back(iso_date(day));
    }
    // Behind a closed gate no arm is to be done.
    const auto a = goes_on(kept, today) && gates_since(kept, client).empty()
                       ? allotted_a(kept.trial, today)
                       : std::nullopt;
    Json json = {{"number", kept.number},
                 {"state", name_of(state_of(kept, today))},
                 {"first_day", iso_date(kept.trial.first_day())},
                 {"last_day", iso_date(kept.trial.last_day())},
                 {"today", a ? Json(*a ? "a" : "b") : Json(nullptr)},
                 {"not_told", std::move(days)}};
    json["stopped"] = kept.stopped_on ? Json{{"on", iso_date(*kept.stopped_on)},
                                             {"because", kept.stopped_because}}
                                      : Json(nullptr);
    json["trial"] = json_of_trial(kept.trial);
    return json;
}

void print_today(const KeptTrial& kept, const ClientOfChange& client, std::ostream& out) {
    const CivilDate today = today_of(client);
    if (!goes_on(kept, today)) {
        return;
    }
    if (const auto gates = gates_since(kept, client); !gates.empty()) {
        for (const std::string& sentence : gates_for_coach(gates, client.licence)) {
            out << "   Not to be gone on with now: " << sentence << "\n";
        }
    } else if (const auto a = allotted_a(kept.trial, today)) {
        out << fmt::format("   Today: {}, {}.\n", *a ? "A" : "B", *a ? kept.trial.a : kept.trial.b);
    }
}

Exit list(const std::vector<KeptTrial>& all, const ClientOfChange& client, bool as_json,
          const Streams& streams) {
    const CivilDate today = today_of(client);
    const WayOfWriting way = client.input.zones.writing();
    if (as_json) {
        Json json = {{"version", trial_json_version}, {"plan", nullptr}, {"reading", nullptr}};
        json["kept"] = Json::array();
        for (const KeptTrial& kept : all) {
            json["kept"].push_back(json_of_kept(kept, client));
        }
        streams.out << dumped(json);
        return Exit::done;
    }
    for (const KeptTrial& kept : all) {
        streams.out << fmt::format("{}. {} ({}, {} to {})\n", kept.number, kept.trial.question,
                                   name_of(state_of(kept, today)), iso_date(kept.trial.first_day()),
                                   iso_date(kept.trial.last_day()));
        print_today(kept, client, streams.out);
        for (const CivilDate day : not_told(kept, today)) {
            streams.out << "   Not told yet: " << day_words(day, way) << ", "
                        << (*allotted_a(kept.trial, day) ? kept.trial.a : kept.trial.b) << "\n";
        }
    }
    if (all.empty()) {
        streams.out << "No trial is kept. 'trial --question CODE --keep' draws one and keeps it.\n";
    }
    return Exit::done;
}

Exit tell_days(const ClientOfChange& client, const KeptTrial& kept, const DoneOn& told,
               const Streams& streams) {
    const OpenClient& open = *client.open;
    for (const auto& [day, done] : told) {
        if (day > today_of(client)) {
            return refuse(streams, "found a day that has not come, expected one that has");
        }
        const auto stored = open.store().tell_trial_day(
            open.client, kept.number, day, arms_done.at(static_cast<std::size_t>(done)),
            open.practice.acting);
        if (!stored) {
            return said(stored.error(), streams);
        }
        streams.out << fmt::format("{}: {}\n", iso_date(day),
                                   arms_done.at(static_cast<std::size_t>(done)));
    }
    return Exit::done;
}

Exit read_it(const ClientOfChange& client, const KeptTrial& kept, ReadingForm form,
             const Streams& streams) {
    const OpenClient& open = *client.open;
    const TrialReading reading = read_kept(kept, client.input);
    if (reading.ended) {
        if (const auto noted =
                open.store().note_look(open.client, "trial_read", open.practice.acting);
            !noted) {
            return said(noted.error(), streams);
        }
    }
    return tell_reading(kept.trial, reading, client, form, streams);
}

Exit of_one(const ClientOfChange& client, const KeptTrial& kept, ReadingForm form,
            const Streams& streams) {
    const TrialOptions& options = form.options;
    const OpenClient& open = *client.open;
    const auto told = done_of(options);
    if (!told) {
        return refuse(streams, told.error());
    }
    if (!told->empty()) {
        return tell_days(client, kept, *told, streams);
    }
    if (!options.stop.empty()) {
        const auto stopped =
            open.store().stop_trial(open.client, kept.number, options.stop, open.practice.acting);
        if (!stopped) {
            return said(stopped.error(), streams);
        }
        streams.out << fmt::format("trial {} was stopped.\n", kept.number);
        return Exit::done;
    }
    if (!options.calendar.empty()) {
        if (const auto gates = gates_since(kept, client); !gates.empty()) {
            print_gates(gates, client.licence, streams.err);
            return refuse(streams,
                          "found a trial that a gate has closed since, expected one that goes on: "
                          "no calendar is written",
                          Exit::cannot_answer);
        }
        const std::string text = trial_calendar(kept.trial);
        const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
        if (const auto done = write_whole_file(options.calendar, {bytes, text.size()}); !done) {
            return refuse(streams, done.error().sentence, Exit::bad_input);
        }
        return Exit::done;
    }
    return read_it(client, kept, form, streams);
}

}  // namespace

tl::expected<std::vector<KeptTrial>, Exit> kept_trials_with(const ClientOfChange& client,
                                                            const Streams& streams) {
    if (!client.open) {
        return std::vector<KeptTrial>{};
    }
    auto kept = kept_trials(client.open->store(), client.open->client, client.input.zones);
    if (!kept) {
        return tl::make_unexpected(said(kept.error(), streams));
    }
    return std::move(*kept);
}

Exit keep_trial(ClientOfChange& client, const Trial& trial, const Streams& streams) {
    if (!client.open) {
        return refuse(streams, "found files, expected --practice to keep a trial");
    }
    const OpenClient& open = *client.open;
    const auto all = kept_trials(open.store(), open.client, client.input.zones);
    if (!all) {
        return said(all.error(), streams);
    }
    if (const KeptTrial* other = one_that_goes_on(*all, today_of(client)); other != nullptr) {
        return refuse(streams,
                      fmt::format("found trial {} that goes on, expected one at a time: with two "
                                  "nothing can be learnt",
                                  other->number),
                      Exit::cannot_answer);
    }
    const auto kept =
        open.store().keep_trial(open.client, trial_document(trial, -1), open.practice.acting);
    if (!kept) {
        return said(kept.error(), streams);
    }
    streams.err << fmt::format("trial {} was kept; its order can't be changed any more.\n", *kept);
    return Exit::done;
}

Exit kept_trials_of(ClientOfChange& client, ReadingForm form, const Streams& streams) {
    if (!client.open) {
        return refuse(streams, "found files, expected --practice, where trials are kept");
    }
    const auto all = kept_trials(client.open->store(), client.open->client, client.input.zones);
    if (!all) {
        return said(all.error(), streams);
    }
    if (!form.options.number) {
        return list(*all, client, form.json, streams);
    }
    const auto kept = std::ranges::find(*all, *form.options.number, &KeptTrial::number);
    if (kept == all->end()) {
        return refuse(streams, "found no trial of this number of this client", Exit::cannot_answer);
    }
    return of_one(client, *kept, form, streams);
}

}  // namespace tracewright

#include "cli/wear_command.hpp"

#include "coaching/client_clock.hpp"
#include "findings/wording.hpp"
#include "trace/wear_end_names.hpp"

#include <fmt/format.h>

#include <ostream>

namespace tracewright {

namespace {

Exit refuse(const Streams& streams, const std::string& sentence) {
    streams.err << "tracewright: " << sentence << "\n";
    return Exit::wrong_usage;
}

Exit list(const std::vector<StoredWear>& wears, const ZoneHistory& clock, const Streams& streams) {
    for (std::size_t i = 0; i < wears.size(); ++i) {
        const Wear& wear = wears[i].wear;
        const auto apart =
            i > 0 ? wear.start - wears[i - 1].wear.readings.back().at : std::chrono::seconds{0};
        streams.out << fmt::format(
            "{}. from {}{}, lasted {}, end: {}{}\n", i + 1,
            day_and_time(clock.wall_time(wear.start), clock.writing()),
            apart > wear.interval ? ", after " + hours_and_minutes(apart) + " without readings"
                                  : "",
            hours_and_minutes(wear.lasted()), words_for(wear.end), fixing_words(wears[i].fixing));
    }
    return Exit::done;
}

}  // namespace

std::string fixing_words(const WearFixing& fixing) {
    std::string words;
    if (fixing.overpatch) {
        words += *fixing.overpatch ? ", with an overpatch" : ", without an overpatch";
    }
    return fixing.site.empty() ? words : words + ", site: " + fixing.site;
}

Exit wear_of(const PracticeOptions& options, const WearOptions& words, const Streams& streams) {
    const auto end = words.end ? wear_end_called(*words.end) : std::nullopt;
    if (words.end && !end) {
        return refuse(streams,
                      "found another word for how a wear ended, expected planned, fell-off, "
                      "sensor-failed, removed, still-on or not-told");
    }
    if (words.overpatch && *words.overpatch != "yes" && *words.overpatch != "no" &&
        *words.overpatch != "unknown") {
        return refuse(streams, "found another word after --overpatch, expected yes, no or unknown");
    }
    const bool tells = words.overpatch || words.site || end;
    if (tells && !words.number) {
        return refuse(streams, "found no number of a wear, expected one that 'wear CLIENT' lists");
    }
    auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    PracticeStore& store = open->store();
    const auto record = store.client(open->client);
    const auto wears = store.wears(open->client);
    if (!record || !wears) {
        return said(record ? wears.error() : record.error(), streams);
    }
    const ZoneHistory clock = client_clock(record->facts);
    if (!words.number) {
        return list(*wears, clock, streams);
    }
    if (*words.number == 0 || *words.number > wears->size()) {
        return refuse(streams, "found no wear of this number, expected one that 'wear' lists");
    }
    StoredWear wear = wears->at(*words.number - 1);
    if (words.overpatch) {
        wear.fixing.overpatch =
            *words.overpatch == "unknown" ? std::nullopt : std::optional(*words.overpatch == "yes");
    }
    wear.fixing.site = words.site.value_or(wear.fixing.site);
    if (words.overpatch || words.site) {
        if (const auto told =
                store.tell_fixing(open->client, wear.id, wear.fixing, open->practice.acting);
            !told) {
            return said(told.error(), streams);
        }
    }
    if (end) {
        if (const auto told = store.change_wear(open->client, wear.id, *end, wear.wear.planned_end,
                                                open->practice.acting);
            !told) {
            return said(told.error(), streams);
        }
        wear.wear.end = *end;
    }
    streams.out << fmt::format("wear {}: end: {}{}\n", *words.number, words_for(wear.wear.end),
                               fixing_words(wear.fixing));
    return Exit::done;
}

}  // namespace tracewright

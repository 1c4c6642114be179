#include "cli/practice_commands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <ostream>

namespace tracewright {

namespace {

template <typename Word, std::size_t Count>
bool set_word(const std::string& written, const std::array<Word, Count>& words, Word& value) {
    for (const Word word : words) {
        if (written == name_of(word)) {
            value = word;
        }
    }
    return written.empty() || written == name_of(value);
}

Stored<CoachRecord> coach_called(PracticeStore& store, const std::string& handle) {
    auto coaches = store.coaches();
    if (!coaches) {
        return tl::make_unexpected(coaches.error());
    }
    const auto record = std::ranges::find_if(
        *coaches, [&](const CoachRecord& one) { return one.coach.handle == handle; });
    if (record == coaches->end()) {
        return store_error(StoreErrorKind::not_found, "found no such coach in this practice");
    }
    return std::move(*record);
}

struct OpenedCoach {
    OpenPractice practice;
    CoachRecord record;
};

tl::expected<OpenedCoach, Exit> opened_coach(const PracticeOptions& options,
                                             const std::string& handle, const Streams& streams) {
    auto practice = opened_practice(options, streams);
    if (!practice) {
        return tl::make_unexpected(practice.error());
    }
    auto record = coach_called(*practice->store, handle);
    if (!record) {
        return tl::make_unexpected(said(record.error(), streams));
    }
    return OpenedCoach{std::move(*practice), std::move(*record)};
}

bool set_role_and_licence(const PracticeWords& words, Coach& coach, const Streams& streams) {
    constexpr std::array roles{CoachRole::owner, CoachRole::coach, CoachRole::reader};
    constexpr std::array licences{Licence::none, Licence::dietitian, Licence::nurse,
                                  Licence::other};
    if (set_word(words.role, roles, coach.role) &&
        set_word(words.licence, licences, coach.licence)) {
        return true;
    }
    streams.err << "tracewright: found a role or licence of another name, expected owner, coach or "
                   "reader; none, dietitian, nurse or other\n";
    return false;
}

}  // namespace

Exit list_coaches(const PracticeOptions& options, const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto coaches = practice->store->coaches();
    if (!coaches) {
        return said(coaches.error(), streams);
    }
    for (const CoachRecord& record : *coaches) {
        streams.out << fmt::format("{:<10} {}, {}, licence: {}{}\n", record.coach.handle,
                                   record.coach.name, name_of(record.coach.role),
                                   name_of(record.coach.licence),
                                   record.coach.left ? ", left" : "");
    }
    return Exit::done;
}

Exit add_coach(const PracticeOptions& options, const PracticeWords& words, const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    Coach coach{words.handle, words.name};
    if (!set_role_and_licence(words, coach, streams)) {
        return Exit::wrong_usage;
    }
    const auto added = practice->store->add_coach(coach, practice->acting);
    if (!added) {
        return said(added.error(), streams);
    }
    streams.out << coach.handle << " was added.\n";
    return Exit::done;
}

Exit change_coach(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams) {
    const auto open = opened_coach(options, words.handle, streams);
    if (!open) {
        return open.error();
    }
    Coach coach = open->record.coach;
    coach.left = coach.left || words.left;
    coach.name = words.name.empty() ? coach.name : words.name;
    if (!set_role_and_licence(words, coach, streams)) {
        return Exit::wrong_usage;
    }
    if (const auto changed =
            open->practice.store->change_coach(open->record.id, coach, open->practice.acting);
        !changed) {
        return said(changed.error(), streams);
    }
    streams.out << coach.handle << " was changed.\n";
    return Exit::done;
}

Exit set_coach_passphrase(const PracticeOptions& options, const PracticeWords& words,
                          const Streams& streams) {
    const auto open = opened_coach(options, words.handle, streams);
    if (!open) {
        return open.error();
    }
    const auto passphrase = other_passphrase(words.from_file);
    if (!passphrase) {
        streams.err << "tracewright: " << passphrase.error() << "\n";
        return Exit::wrong_usage;
    }
    if (const auto set = open->practice.store->set_coach_passphrase(open->record.id, *passphrase,
                                                                    open->practice.acting);
        !set) {
        return said(set.error(), streams);
    }
    streams.out << words.handle << " has a passphrase of their own.\n";
    return Exit::done;
}

}  // namespace tracewright

#include "cli/escalation_records.hpp"
#include "cli/practice_commands.hpp"
#include "store/client_document.hpp"
#include "store/client_export.hpp"
#include "store/meal_photo_book.hpp"
#include "store/new_client.hpp"
#include "store/whole_file.hpp"
#include "time/zone.hpp"

#include <date/date.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <ostream>

namespace tracewright {

namespace {

std::string utc_day(Instant at) {
    return date::format(
        "%F %R UTC", date::floor<std::chrono::minutes>(date::sys_seconds{at.time_since_epoch()}));
}

CivilDate day_of_acting(const Acting& acting) {
    return CivilDate{std::chrono::floor<std::chrono::days>(acting.at.time_since_epoch())};
}

tl::expected<ClientFacts, std::string> changed_by(const ClientFacts& facts,
                                                  const std::string& file) {
    if (file.empty()) {
        return facts;
    }
    const auto bytes = read_whole_file(file);
    if (!bytes) {
        return tl::make_unexpected(bytes.error().sentence);
    }
    auto changed =
        client_facts_changed(facts, {reinterpret_cast<const char*>(bytes->data()), bytes->size()});
    return changed ? changed : tl::make_unexpected(file + ": " + changed.error());
}

// `from` is empty where nobody said since when.
void add_medicines(ClientFacts& facts, const std::vector<std::string>& medicines,
                   std::optional<CivilDate> from, CivilDate day) {
    for (const std::string& written : medicines) {
        facts.medicines.push_back({written, from, {}});
        facts.medicines_asked_on = day;
    }
}

Exit not_read(const std::string& error, const Streams& streams) {
    streams.err << "tracewright: " << error << "\n";
    return Exit::bad_input;
}

}  // namespace

Exit add_client(const PracticeOptions& options, const PracticeWords& words,
                const FileOptions& files, const Streams& streams) {
    ClientFacts facts;
    if (!files.zone.empty()) {
        const auto zone = Zone::named(files.zone);
        if (!zone) {
            streams.err << "tracewright: " << zone.error() << "\n";
            return Exit::wrong_usage;
        }
        facts.zones = {{zone->name(), {}}};
    }
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto writing = practice->store->writing();
    if (!writing) {
        return said(writing.error(), streams);
    }
    facts.unit = writing->unit;
    auto told = changed_by(facts, words.facts);
    if (!told) {
        return not_read(told.error(), streams);
    }
    add_medicines(*told, words.medicines, {}, day_of_acting(practice->acting));
    if (surely_under_18(*told, practice->acting.at)) {
        return not_read(
            "found a year of birth under 18, expected a grown-up: under 18 is not taken on",
            streams);
    }
    const auto clients = practice->store->clients();
    if (!clients) {
        return said(clients.error(), streams);
    }
    const std::string handle = words.handle.empty() ? free_handle(*clients) : words.handle;
    const auto client = practice->store->add_client(handle, words.name, *told, practice->acting);
    if (!client) {
        return said(client.error(), streams);
    }
    streams.out << handle << " was added.\n";
    if (!told->medicines_asked_on) {
        streams.out
            << "Medicines were not asked about yet: until they are, every low counts as one "
               "that a medicine may have caused.\n";
    }
    return Exit::done;
}

Exit list_clients(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams) {
    const auto practice = opened_practice(options, streams);
    if (!practice) {
        return practice.error();
    }
    const auto clients = practice->store->clients();
    if (!clients) {
        return said(clients.error(), streams);
    }
    if (words.json) {
        nlohmann::ordered_json document{{"format", "clients"}, {"version", 1}};
        document["clients"] = nlohmann::ordered_json::array();
        for (const ClientLine& line : *clients) {
            document["clients"].push_back(
                {{"handle", line.handle},
                 {"name", line.name},
                 {"last_reading",
                  line.last_reading
                      ? nlohmann::ordered_json(date::format(
                            "%FT%TZ", date::sys_seconds{line.last_reading->time_since_epoch()}))
                      : nlohmann::ordered_json()}});
        }
        streams.out << document.dump(2) << "\n";
        return Exit::done;
    }
    for (const ClientLine& line : *clients) {
        streams.out << fmt::format("{:<10} {}, {}\n", line.handle, line.name,
                                   line.last_reading ? "last reading " + utc_day(*line.last_reading)
                                                     : std::string("no reading yet"));
    }
    if (clients->empty()) {
        streams.out << "No client yet. Add one: client add NAME\n";
    }
    return Exit::done;
}

Exit show_client(const PracticeOptions& options, const PracticeWords& words,
                 const Streams& streams) {
    const auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    PracticeStore& store = open->store();
    const std::int64_t id = open->client;
    const Acting& acting = open->practice.acting;
    const auto record = store.client(id);
    const auto wears = store.wears(id);
    const auto imports = store.imports(id);
    const auto looked = store.note_look(id, "client_seen", acting);
    if (!record || !wears || !imports || !looked) {
        return said(!record    ? record.error()
                    : !wears   ? wears.error()
                    : !imports ? imports.error()
                               : looked.error(),
                    streams);
    }
    if (words.json) {
        streams.out << client_document(record->facts, 2) << "\n";
        return Exit::done;
    }
    streams.out << record->handle << ": " << record->name << "\n"
                << client_document(record->facts, 2) << "\n";
    for (const StoredWear& stored : *wears) {
        streams.out << fmt::format("{}: from {}, {} readings, {}\n", stored.wear.label,
                                   utc_day(stored.wear.start), stored.wear.readings.size(),
                                   words_for(stored.wear.end));
    }
    for (const ImportRecord& import : *imports) {
        streams.out << fmt::format(
            "import {} of {}: {}: stored {}, duplicate {}, conflict {}, rejected {}\n", import.id,
            utc_day(import.at), import.source, import.rows_stored, import.rows_duplicate,
            import.rows_conflict, import.rows_rejected);
    }
    return Exit::done;
}

Exit change_client(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams) {
    const auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    PracticeStore& store = open->store();
    const std::int64_t id = open->client;
    const Acting& acting = open->practice.acting;
    auto record = store.client(id);
    if (!record) {
        return said(record.error(), streams);
    }
    auto facts = changed_by(record->facts, words.facts);
    if (!facts) {
        return not_read(facts.error(), streams);
    }
    const CivilDate today = day_of_acting(acting);
    add_medicines(*facts, words.medicines, today, today);
    record->facts = std::move(*facts);
    if (!words.name.empty()) {
        record->name = words.name;
    }
    if (!words.handle.empty()) {
        record->handle = words.handle;
    }
    if (const auto changed = store.change_client(*record, acting); !changed) {
        return said(changed.error(), streams);
    }
    streams.out << record->handle << " was changed.\n";
    // A medicine that is told makes lows that were seen before an event, at once.
    return say_escalations(store, id, record->facts, acting, streams);
}

Exit erase_client(const PracticeOptions& options, const PracticeWords& words,
                  const Streams& streams) {
    const auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    PracticeStore& store = open->store();
    const std::int64_t id = open->client;
    const Acting& acting = open->practice.acting;
    const auto record = store.client(id);
    const auto audit = store.audit(id);
    if (!record || !audit) {
        return said(record ? audit.error() : record.error(), streams);
    }
    const bool exported = std::ranges::any_of(
        *audit, [](const AuditLine& line) { return line.deed == "client_exported"; });
    if (!exported && !words.without_export) {
        streams.err << "tracewright: found no export of this client yet, expected one first "
                       "(client export), or --without-export if the client wants none\n";
        return Exit::cannot_answer;
    }
    if (words.confirm != record->handle) {
        streams.err << "tracewright: erasing can't be undone: say --confirm " << record->handle
                    << "\n";
        return Exit::cannot_answer;
    }
    if (const auto erased = store.erase_client(id, acting); !erased) {
        return said(erased.error(), streams);
    }
    streams.out << "One client was erased. Files written before (exports, reviews, backups) are "
                   "yours to delete; a backup restored with "
                << erasure_list_path(options.practice) << " erases again.\n";
    return Exit::done;
}

Exit export_client(const PracticeOptions& options, const PracticeWords& words,
                   const Streams& streams) {
    const auto open = opened_client(options, words.client, streams);
    if (!open) {
        return open.error();
    }
    const auto holdings = open->store().holdings(open->client, open->practice.acting);
    if (!holdings) {
        return said(holdings.error(), streams);
    }
    MealPhotoBook book(*open->practice.store);
    const auto photos = book.lines(open->client);
    if (!photos) {
        return said(photos.error(), streams);
    }
    std::error_code error;
    std::filesystem::create_directories(words.out, error);
    const auto written = [&](const std::string& name, const std::string& bytes) -> Stored<void> {
        const std::string path = (std::filesystem::path(words.out) / name).string();
        auto whole = write_whole_file(
            path, {reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()});
        if (whole) {
            streams.out << path << "\n";
        }
        return whole;
    };
    for (const ExportedFile& file : client_export(*holdings, *photos)) {
        if (const auto done = written(file.name, file.bytes); !done) {
            return said(done.error(), streams);
        }
    }
    for (const MealPhotoLine& line : *photos) {
        const auto photo = book.photo(open->client, line.id);
        const auto done = photo ? written(exported_file_of(line), photo->jpeg)
                                : tl::make_unexpected(photo.error());
        if (!done) {
            return said(done.error(), streams);
        }
    }
    return Exit::done;
}

}  // namespace tracewright

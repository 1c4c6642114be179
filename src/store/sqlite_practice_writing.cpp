#include "store/sqlite_practice.hpp"

namespace tracewright {

namespace {

constexpr const char* row_name = "writing";

}  // namespace

Stored<PracticeWriting> SqlitePractice::writing() {
    return reading([&]() -> Stored<PracticeWriting> {
        Statement kept(*database_, "SELECT value FROM practice WHERE name = ?");
        if (!kept.with(row_name).step()) {
            return PracticeWriting{};
        }
        const auto text = seal_.opened(kept.blob(0), row_name);
        const auto writing = text.and_then(
            [](const std::string& document) { return writing_changed({}, document); });
        if (!writing) {
            return store_error(StoreErrorKind::broken, writing.error());
        }
        return *writing;
    });
}

Stored<void> SqlitePractice::set_writing(const PracticeWriting& writing, const Acting& acting) {
    return changing(acting, Needs::a_change, [&]() -> Stored<void> {
        Statement put(*database_,
                      "INSERT INTO practice(name, value) VALUES (?, ?) ON CONFLICT(name) DO UPDATE "
                      "SET value = excluded.value");
        put.with(row_name, seal_.sealed(writing_document(writing), row_name)).run();
        audit_.add(acting, writing_changed_deed, std::nullopt);
        return {};
    });
}

Stored<ClientRecord> SqlitePractice::as_written_here(ClientRow row) {
    const auto written = writing();
    if (!written) {
        return tl::make_unexpected(written.error());
    }
    row.facts.writing = written->way;
    return ClientRecord{row.id, std::move(row.handle), std::move(row.name), std::move(row.facts),
                        row.revision};
}

}  // namespace tracewright

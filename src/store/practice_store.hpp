#pragma once

#include "access/coach.hpp"
#include "access/share_token.hpp"
#include "coaching/client_facts.hpp"
#include "coaching/reminders.hpp"
#include "diary/diary_entry.hpp"
#include "store/audit_table.hpp"
#include "store/import_plan.hpp"
#include "store/import_table.hpp"
#include "store/practice_records.hpp"
#include "store/practice_writing.hpp"
#include "store/store_error.hpp"
#include "trace/suspect.hpp"
#include "trace/wear.hpp"
#include "trace/wear_fixing.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tracewright {

/// The audit's word for another way of writing: what was read of any client holds no more.
inline constexpr const char* writing_changed_deed = "writing_changed";

/// One line of the list of clients.
struct ClientLine {
    std::int64_t id = 0;
    std::string handle;  ///< a short word without the name in it: stands in audit and errors
    std::string name;
    std::optional<Instant> last_reading;
};

struct ClientRecord {
    std::int64_t id = 0;
    std::string handle;
    std::string name;
    ClientFacts facts;
    std::int64_t revision = 0;  ///< counts changes: a change states which one it was made on
};

struct CoachRecord {
    std::int64_t id = 0;
    Coach coach;
};

/// A wear with what was read of it.
struct StoredWear {
    std::int64_t id = 0;
    Wear wear;
    WearFixing fixing = {};
};

/// What bringing a file in did, or would do.
struct ImportOutcome {
    std::int64_t import = 0;  ///< 0: nothing was stored
    ImportPlan plan;
};

/// Everything of one client that an export holds, in a fixed order.
struct ClientHoldings {
    ClientRecord client;
    std::vector<StoredWear> wears;
    Diary diary;
    std::vector<BroughtIn::Held> held;
    std::vector<ImportRecord> imports;
    std::vector<StretchRecord> stretches;
    std::vector<NoteRecord> notes;
    std::vector<PromiseRecord> promises;
    std::vector<FoodRecord> foods;
    std::vector<TrialRecord> trials;
    std::vector<ShareRecord> shares;
    std::vector<EscalationRecord> escalations;
    std::vector<KeptFinding> findings;
};

/// The practice: all clients of one coach or organisation. Every call does all it says or nothing,
/// and what it returned as done is kept whatever happens next. Changes and looks are written to the
/// audit with the coach and the time given. Not for several threads at once; several programs may
/// each open the same practice.
class PracticeStore {
  public:
    PracticeStore() = default;
    PracticeStore(const PracticeStore&) = delete;
    PracticeStore& operator=(const PracticeStore&) = delete;
    virtual ~PracticeStore() = default;

    virtual Stored<std::vector<CoachRecord>> coaches() = 0;
    /// `exists` if the handle is taken.
    virtual Stored<std::int64_t> add_coach(const Coach& coach, const Acting& acting) = 0;
    virtual Stored<void> change_coach(std::int64_t id, const Coach& coach,
                                      const Acting& acting) = 0;

    /// In order of handles.
    virtual Stored<std::vector<ClientLine>> clients() = 0;
    /// One of them, without opening the others' names.
    virtual Stored<ClientLine> client_line(std::int64_t client) = 0;
    /// By handle, or by the whole name where one client alone bears it.
    virtual Stored<std::int64_t> client_called(std::string_view handle_or_name) = 0;
    virtual Stored<std::int64_t> add_client(const std::string& handle, const std::string& name,
                                            const ClientFacts& facts, const Acting& acting) = 0;
    virtual Stored<ClientRecord> client(std::int64_t client) = 0;
    /// `changed_meanwhile` unless `record.revision` is the one that is stored.
    virtual Stored<void> change_client(const ClientRecord& record, const Acting& acting) = 0;
    /// Leaves nothing of the client but the audit's line that one was erased, by whom and when.
    virtual Stored<void> erase_client(std::int64_t client, const Acting& acting) = 0;

    /// Ascending by start, labelled "wear 1", ...; with the readings in the window (all without
    /// one). Wears without a reading there are left out if a window is given.
    virtual Stored<std::vector<StoredWear>> wears(
        std::int64_t client, std::optional<Interval> window = std::nullopt) = 0;
    virtual Stored<void> change_wear(std::int64_t client, std::int64_t wear, WearEnd end,
                                     std::optional<Instant> planned_end, const Acting& acting) = 0;
    /// Tells how a sensor sat, in place of what was told before.
    virtual Stored<void> tell_fixing(std::int64_t client, std::int64_t wear,
                                     const WearFixing& fixing, const Acting& acting) = 0;
    /// That this one is counted where another was worn at once, in place of another chosen there;
    /// or no longer.
    virtual Stored<void> choose_wear(std::int64_t client, std::int64_t wear, bool chosen,
                                     const Acting& acting) = 0;
    virtual Stored<Diary> diary(std::int64_t client,
                                std::optional<Interval> window = std::nullopt) = 0;
    /// What coaches told of stretches of the trace, in order of telling.
    virtual Stored<std::vector<ToldStretch>> told_stretches(std::int64_t client) = 0;

    /// Stores what the file gives that is new; nothing if the plan has a question.
    virtual Stored<ImportOutcome> bring_in(std::int64_t client, BroughtIn file, WhoseFile whose,
                                           const Acting& acting) = 0;
    /// What bringing it in would do. Stores nothing.
    virtual Stored<ImportPlan> preview(std::int64_t client, BroughtIn file, WhoseFile whose) = 0;
    virtual Stored<std::vector<ImportRecord>> imports(std::int64_t client) = 0;
    /// When readings were last brought in; empty: none ever were.
    virtual Stored<std::optional<Instant>> readings_brought_in_at(std::int64_t client) = 0;
    /// Undoes the client's newest import. `refused`, with a list, where something rests on it;
    /// `not_found` without any.
    virtual Stored<ImportRecord> undo(std::int64_t client, const Acting& acting) = 0;

    virtual Stored<std::int64_t> add_note(std::int64_t client, const std::string& text,
                                          const Acting& acting) = 0;
    virtual Stored<std::vector<NoteRecord>> notes(std::int64_t client) = 0;
    virtual Stored<std::int64_t> add_promise(std::int64_t client, const std::string& text,
                                             CivilDate due, const Acting& acting) = 0;
    virtual Stored<std::vector<PromiseRecord>> promises(std::int64_t client) = 0;
    virtual Stored<void> keep_promise(std::int64_t client, std::int64_t promise,
                                      const Acting& acting) = 0;

    /// In order of first telling. `keep_food` takes the place of one so called already (`called`).
    virtual Stored<std::vector<FoodRecord>> foods(std::int64_t client) = 0;
    virtual Stored<std::int64_t> keep_food(std::int64_t client, const ClientFood& food,
                                           const Acting& acting) = 0;
    virtual Stored<void> forget_food(std::int64_t client, std::int64_t food,
                                     const Acting& acting) = 0;

    /// In order of planning. A trial that was kept is never rewritten.
    virtual Stored<std::vector<TrialRecord>> trials(std::int64_t client) = 0;
    /// `refused` where the document is no trial, or was changed after the lot.
    virtual Stored<std::int64_t> keep_trial(std::int64_t client, const std::string& document,
                                            const Acting& acting) = 0;
    /// "a", "b" or "neither" was done on a day of it. `refused` for another day or word;
    /// `not_found` for none that goes on.
    virtual Stored<void> tell_trial_day(std::int64_t client, std::int64_t trial, CivilDate day,
                                        const std::string& done, const Acting& acting) = 0;
    /// `refused` without the reason; `not_found` for none that goes on.
    virtual Stored<void> stop_trial(std::int64_t client, std::int64_t trial, const std::string& why,
                                    const Acting& acting) = 0;

    /// In order of giving, each with its looks.
    virtual Stored<std::vector<ShareRecord>> shares(std::int64_t client) = 0;
    /// Gives a share from now on; its client and beginning are those of the call. `refused` where
    /// something is lacking. Of the token only the hash is asked for and kept.
    virtual Stored<std::int64_t> give_share(std::int64_t client, const Share& share,
                                            const ShareTokenHash& token, const Acting& acting) = 0;
    /// Closed from now on. `not_found` for none of this client's that is not revoked yet.
    virtual Stored<void> revoke_share(std::int64_t client, std::int64_t share,
                                      const Acting& acting) = 0;
    /// `not_found` for a token that opens none.
    virtual Stored<OpenedShare> share_opened_by(const ShareTokenHash& token) = 0;
    /// Lists one look through a share; who looks is no coach, so the audit has no line of it.
    virtual Stored<void> note_share_look(std::int64_t share, const ShareLook& look) = 0;

    /// Of the whole practice; those of a new one until others are set.
    virtual Stored<ReminderRules> reminder_rules() = 0;
    virtual Stored<void> set_reminder_rules(const ReminderRules& rules, const Acting& acting) = 0;

    /// Of the whole practice; the default until another is set.
    virtual Stored<PracticeWriting> writing() = 0;
    virtual Stored<void> set_writing(const PracticeWriting& writing, const Acting& acting) = 0;

    /// One record for each event; what was answered stays answered.
    virtual Stored<void> put_escalations(std::int64_t client,
                                         const std::vector<EscalationRecord>& escalations,
                                         const Acting& acting) = 0;
    /// Those without an answer; what was answered is a record and stays. The audit keeps that each
    /// was there.
    virtual Stored<void> withdraw_escalations(std::int64_t client,
                                              const std::vector<std::int64_t>& numbers,
                                              const Acting& acting) = 0;
    virtual Stored<std::vector<EscalationRecord>> escalations(std::int64_t client) = 0;
    /// `refused` without a name or without what was done.
    virtual Stored<void> acknowledge(std::int64_t client, std::int64_t escalation,
                                     const std::string& by, const std::string& done,
                                     const Acting& acting) = 0;

    virtual Stored<std::int64_t> keep_finding(std::int64_t client, Interval window,
                                              const std::string& document,
                                              const Acting& acting) = 0;

    virtual Stored<ClientHoldings> holdings(std::int64_t client, const Acting& acting) = 0;
    /// Writes that a coach looked: a review, an export; with client 0 at the list of all.
    virtual Stored<void> note_look(std::int64_t client, const std::string& deed,
                                   const Acting& acting) = 0;
    virtual Stored<std::vector<AuditLine>> audit(std::optional<std::int64_t> client) = 0;

    /// A sentence for each fault found; empty: none. Reads everything.
    virtual Stored<std::vector<std::string>> faults() = 0;
};

}  // namespace tracewright

#pragma once

#include "access/practice_key.hpp"
#include "access/sealing.hpp"
#include "store/client_food_table.hpp"
#include "store/client_table.hpp"
#include "store/erasure_list.hpp"
#include "store/practice_store.hpp"
#include "store/record_table.hpp"
#include "store/share_table.hpp"
#include "store/sqlite_database.hpp"
#include "store/sqlite_failure.hpp"
#include "store/stretch_table.hpp"
#include "store/trial_table.hpp"
#include "store/wear_fixing_table.hpp"
#include "store/who_may.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>

namespace tracewright {

/// Opens a practice's locked key: by passphrase or recovery key.
using Unlocking = std::function<tl::expected<SecretKey, std::string>(const LockedPracticeKey&)>;

/// A practice in one SQLite file, with its write-ahead log beside it.
class SqlitePractice final : public PracticeStore {
  public:
    /// Makes a new practice with its first coach, the owner. `exists` if there is a file.
    static Stored<std::unique_ptr<SqlitePractice>> create(const std::string& path,
                                                          const SecretKey& key,
                                                          const LockedPracticeKey& locked,
                                                          const Coach& owner, Instant at);
    /// Opens one, brings its tables forward if they are older, and finishes an erasure that was
    /// cut short. Refuses network file systems.
    static Stored<std::unique_ptr<SqlitePractice>> open(const std::string& path,
                                                        const Unlocking& unlocking);

    const std::string& path() const { return path_; }
    const SecretKey& key() const { return key_; }
    LockedPracticeKey locked_key();
    /// Gives a coach a passphrase of their own, or another one: an owner to anyone, a coach to
    /// themselves. `refused` below 10 signs.
    Stored<void> set_coach_passphrase(std::int64_t coach, std::string_view passphrase,
                                      const Acting& acting);
    /// The same practice under another passphrase.
    Stored<void> change_passphrase(std::string_view passphrase, const Acting& acting);
    /// The same practice under another recovery key: the one before opens older backups alone.
    Stored<void> change_recovery_key(const SecretKey& recovery, const Acting& acting);
    /// The whole database as of now, as bytes in memory (the online backup).
    Stored<std::vector<std::uint8_t>> image();
    /// Writes that a backup was made.
    Stored<void> note_backup(const Acting& acting);
    /// Writes what a coach did that is about no client: signed in, signed out.
    Stored<void> note_deed(const std::string& deed, const Acting& acting);
    /// Grows with every change that any program makes.
    std::int64_t change_count();
    /// The audit's lines with a greater number, of all clients, oldest first: what was done since.
    Stored<std::vector<AuditLine>> audit_since(std::int64_t line);
    /// At most so many with a lesser number, newest first; of one client, or of all.
    Stored<std::vector<AuditLine>> audit_before(std::int64_t line, std::int64_t most,
                                                std::optional<std::int64_t> client = std::nullopt);
    /// When a deed was last done, whoever did it.
    Stored<std::optional<AuditLine>> last_deed(const std::string& deed);

    /// One moment of the practice, whatever other programs do meanwhile: all that `deed` reads, in
    /// however many calls, is of that moment. It may change nothing.
    template <typename Deed>
    auto reading(Deed deed) -> decltype(deed()) {
        return caught([&]() -> decltype(deed()) {
            std::optional<Transaction> moment;
            if (!database_->within_transaction()) {
                moment.emplace(*database_, Transaction::Kind::read);
            }
            return deed();
        });
    }

    Stored<std::vector<CoachRecord>> coaches() override;
    Stored<std::int64_t> add_coach(const Coach& coach, const Acting& acting) override;
    Stored<void> change_coach(std::int64_t id, const Coach& coach, const Acting& acting) override;

    Stored<std::vector<ClientLine>> clients() override;
    Stored<ClientLine> client_line(std::int64_t client) override;
    /// The clients' numbers, in the order of `clients`.
    Stored<std::vector<std::int64_t>> client_numbers();
    Stored<std::int64_t> client_called(std::string_view handle_or_name) override;
    Stored<std::int64_t> add_client(const std::string& handle, const std::string& name,
                                    const ClientFacts& facts, const Acting& acting) override;
    Stored<ClientRecord> client(std::int64_t client) override;
    Stored<void> change_client(const ClientRecord& record, const Acting& acting) override;
    Stored<void> erase_client(std::int64_t client, const Acting& acting) override;

    Stored<std::vector<StoredWear>> wears(std::int64_t client,
                                          std::optional<Interval> window = std::nullopt) override;
    Stored<void> change_wear(std::int64_t client, std::int64_t wear, WearEnd end,
                             std::optional<Instant> planned_end, const Acting& acting) override;
    Stored<void> tell_fixing(std::int64_t client, std::int64_t wear, const WearFixing& fixing,
                             const Acting& acting) override;
    Stored<void> choose_wear(std::int64_t client, std::int64_t wear, bool chosen,
                             const Acting& acting) override;
    Stored<Diary> diary(std::int64_t client,
                        std::optional<Interval> window = std::nullopt) override;
    Stored<std::vector<ToldStretch>> told_stretches(std::int64_t client) override;

    Stored<ImportOutcome> bring_in(std::int64_t client, BroughtIn file, WhoseFile whose,
                                   const Acting& acting) override;
    Stored<ImportPlan> preview(std::int64_t client, BroughtIn file, WhoseFile whose) override;
    Stored<std::vector<ImportRecord>> imports(std::int64_t client) override;
    Stored<std::optional<Instant>> readings_brought_in_at(std::int64_t client) override;
    Stored<ImportRecord> undo(std::int64_t client, const Acting& acting) override;

    Stored<std::int64_t> add_note(std::int64_t client, const std::string& text,
                                  const Acting& acting) override;
    Stored<std::vector<NoteRecord>> notes(std::int64_t client) override;
    Stored<std::int64_t> add_promise(std::int64_t client, const std::string& text, CivilDate due,
                                     const Acting& acting) override;
    Stored<std::vector<PromiseRecord>> promises(std::int64_t client) override;
    Stored<void> keep_promise(std::int64_t client, std::int64_t promise,
                              const Acting& acting) override;

    Stored<std::vector<FoodRecord>> foods(std::int64_t client) override;
    Stored<std::int64_t> keep_food(std::int64_t client, const ClientFood& food,
                                   const Acting& acting) override;
    Stored<void> forget_food(std::int64_t client, std::int64_t food, const Acting& acting) override;

    Stored<std::vector<TrialRecord>> trials(std::int64_t client) override;
    Stored<std::int64_t> keep_trial(std::int64_t client, const std::string& document,
                                    const Acting& acting) override;
    Stored<void> tell_trial_day(std::int64_t client, std::int64_t trial, CivilDate day,
                                const std::string& done, const Acting& acting) override;
    Stored<void> stop_trial(std::int64_t client, std::int64_t trial, const std::string& why,
                            const Acting& acting) override;
    Stored<std::vector<ShareRecord>> shares(std::int64_t client) override;
    Stored<std::int64_t> give_share(std::int64_t client, const Share& share,
                                    const ShareTokenHash& token, const Acting& acting) override;
    Stored<void> revoke_share(std::int64_t client, std::int64_t share,
                              const Acting& acting) override;
    Stored<OpenedShare> share_opened_by(const ShareTokenHash& token) override;
    Stored<void> note_share_look(std::int64_t share, const ShareLook& look) override;
    Stored<ReminderRules> reminder_rules() override;
    Stored<void> set_reminder_rules(const ReminderRules& rules, const Acting& acting) override;
    Stored<PracticeWriting> writing() override;
    Stored<void> set_writing(const PracticeWriting& writing, const Acting& acting) override;
    Stored<void> put_escalations(std::int64_t client,
                                 const std::vector<EscalationRecord>& escalations,
                                 const Acting& acting) override;
    Stored<void> withdraw_escalations(std::int64_t client, const std::vector<std::int64_t>& numbers,
                                      const Acting& acting) override;
    Stored<std::vector<EscalationRecord>> escalations(std::int64_t client) override;
    Stored<void> acknowledge(std::int64_t client, std::int64_t escalation, const std::string& by,
                             const std::string& done, const Acting& acting) override;
    Stored<std::int64_t> keep_finding(std::int64_t client, Interval window,
                                      const std::string& document, const Acting& acting) override;

    Stored<ClientHoldings> holdings(std::int64_t client, const Acting& acting) override;
    Stored<void> note_look(std::int64_t client, const std::string& deed,
                           const Acting& acting) override;
    Stored<std::vector<AuditLine>> audit(std::optional<std::int64_t> client) override;
    Stored<std::vector<std::string>> faults() override;

  private:
    SqlitePractice(std::string path, std::unique_ptr<Database> database, SecretKey key);

    std::string path_;
    std::unique_ptr<Database> database_;
    SecretKey key_;
    Seal seal_;
    CoachTable coaches_;
    ClientTable clients_;
    TraceTable trace_;
    DiaryTable diary_;
    ImportTable imports_;
    RecordTable records_;
    ClientFoodTable foods_;
    TrialTable trials_;
    WearFixingTable fixings_;
    ShareTable shares_;
    StretchTable stretches_;
    AuditTable audit_;

    /// All of the deed or, if it gives an error or throws, nothing.
    template <typename Deed>
    auto changing(const Acting& acting, Needs needs, Deed deed) -> decltype(deed()) {
        return caught([&]() -> decltype(deed()) {
            Transaction all_or_nothing(*database_);
            if (const auto allowed = may(coaches_, acting, needs); !allowed) {
                return tl::make_unexpected(allowed.error());
            }
            auto done = deed();
            if (done) {
                all_or_nothing.commit();
            }
            return done;
        });
    }
    /// With the practice's way of writing among the facts.
    Stored<ClientRecord> as_written_here(ClientRow row);
    Stored<std::string> place(std::int64_t client);
    std::set<std::int64_t> chosen_wears(std::int64_t client);
    std::vector<StoredWear> wears_within(std::int64_t client, const std::string& place,
                                         std::optional<Interval> window);
    void give_held_to(std::vector<StoredWear>& wears, std::int64_t client,
                      std::optional<Interval> window);
    Stored<void> finish_erasures();
    Stored<void> sweep();
};

}  // namespace tracewright

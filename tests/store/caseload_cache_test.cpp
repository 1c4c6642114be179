// What is kept between looks at the list gives what reading everyone gives, whatever is done and as
// time passes. Everybody in here is invented.
#include "store/caseload_cache.hpp"

#include "coaching/client_clock.hpp"
#include "store/client_of_list.hpp"
#include "store/practice_for_tests.hpp"
#include "store/trial_document.hpp"

#include <gtest/gtest.h>

#include <random>

using namespace tracewright;
using namespace std::chrono_literals;
using std::chrono::days;

namespace {

constexpr std::int64_t one_day = 86'400;

std::vector<std::string> words(const std::vector<CaseloadLine>& lines) {
    std::vector<std::string> all;
    for (const CaseloadLine& line : lines) {
        std::string text = line.handle + " " + line.name;
        for (const Need& need : line.needs) {
            text += std::string("\n  ") + name_of(need.kind) + " " + need.why + " " + need.next;
        }
        for (std::size_t day = 0; day < line.week.seen.size(); ++day) {
            text += line.week.seen[day] ? " seen" : " -";
            text += line.week.written[day] ? " written" : " -";
        }
        all.push_back(text);
    }
    return all;
}

std::vector<std::string> read_anew(PracticeStore& store, Instant as_of) {
    std::vector<CaseloadClient> clients;
    const auto listed = store.clients();
    for (const ClientLine& line : *listed) {
        clients.push_back(*client_of_list(store, line, as_of));
    }
    return words(caseload(clients, as_of));
}

/// Whose walk closes where lows are seen, and nothing else closes it.
ClientFacts on_what_can_cause_lows(CivilDate asked_on) {
    ClientFacts facts;
    facts.born_year = 1966;
    facts.told_type = "Type 2";
    facts.medicines_asked_on = asked_on;
    facts.medicines = {{"gliclazide 30 mg", {}, {}}};
    facts.cautions.pregnancy = Pregnancy::no;
    facts.cautions.eating = {asked_on, "Larch (invented)", Answered::no};
    for (Answered* answer :
         {&facts.cautions.severe_low_before, &facts.cautions.eye_disease, &facts.cautions.frail,
          &facts.cautions.numb_feet_or_wound, &facts.cautions.chest_symptoms}) {
        *answer = Answered::no;
    }
    return facts;
}

AgreedChange a_walk(CivilDate agreed_on, CivilDate check_on) {
    AgreedChange walk{"a walk", agreed_on, check_on};
    walk.kind = Proposed::walking;
    return walk;
}

/// A practice to which something happens at each step, by one of two programs.
class Happening {
  public:
    explicit Happening(unsigned seed)
        : draw_(seed),
          first_(new_practice(folder_.file("p"))),
          second_(opened_practice(folder_.file("p"))) {}

    SqlitePractice& looked_at() { return *first_; }
    Instant now() const { return at_second(now_); }

    void step() {
        const auto what = upto(16);
        if (what < 4) {
            constexpr std::array steps = {std::int64_t{50}, std::int64_t{7'300},
                                          std::int64_t{40'000}, 3 * one_day, 9 * one_day};
            now_ += steps.at(upto(steps.size()));
        } else if (what == 4 && upto(3) == 0) {
            now_ -= 5'000;  // a look as of an earlier moment
        } else if (clients_.empty() || (what == 5 && clients_.size() < 5)) {
            ClientFacts facts =
                upto(2) == 0 ? ClientFacts{} : on_what_can_cause_lows(some_day() - 40 * days{1});
            facts.zones = {{upto(2) == 0 ? "Europe/Berlin" : "America/New_York", {}}};
            const auto handle = "c" + std::to_string(++added_);
            clients_.push_back(*store().add_client(handle, "Somebody " + handle, facts, acting()));
        } else {
            happen(what, clients_.at(upto(clients_.size())));
        }
    }

  private:
    std::mt19937 draw_;
    Folder folder_;
    std::unique_ptr<SqlitePractice> first_;
    std::unique_ptr<SqlitePractice> second_;
    std::vector<std::int64_t> clients_;
    std::int64_t now_ = 400 * one_day;
    int added_ = 0;

    std::size_t upto(std::size_t end) { return draw_() % end; }
    SqlitePractice& store() { return upto(3) == 0 ? *second_ : *first_; }
    /// Now, or an hour ahead: another machine's clock.
    Acting acting() { return {the_owner, at_second(now_ + (upto(6) == 0 ? 3'600 : 0))}; }
    CivilDate some_day() {
        return std::chrono::floor<std::chrono::days>(now() - std::chrono::days{3})
                   .time_since_epoch() +
               CivilDate{} + std::chrono::days{upto(6)};
    }

    void happen(std::size_t what, std::int64_t client) {
        SqlitePractice& at = store();
        switch (what) {
            case 6:
            case 7: {  // readings and meals, some of them dated ahead
                const auto days_back = static_cast<std::int64_t>(upto(32));
                const auto length = 1 + static_cast<std::int64_t>(upto(4));
                at.bring_in(
                    client,
                    with_meals(file_of(now_ - days_back * one_day, static_cast<int>(96 * length),
                                       900, static_cast<int>(upto(9)), upto(2) == 0 ? 1 : 0.6),
                               static_cast<int>(3 * length)),
                    WhoseFile::this_client, acting());
                break;
            }
            case 8:
                at.undo(client, acting());
                break;
            case 9:
                at.add_promise(client, "a recipe", some_day(), acting());
                break;
            case 10: {
                const auto all = at.promises(client);
                if (!all->empty()) {
                    at.keep_promise(client, all->at(upto(all->size())).id, acting());
                }
                break;
            }
            case 11:
                at.put_escalations(
                    client,
                    {{0,
                      "very_low@" + std::to_string(upto(4)),
                      {},
                      R"({"rung": 1, "at": )" + std::to_string(now().time_since_epoch().count()) +
                          R"(, "what": "very low", "whom": "Ring."})",
                      {}}},
                    acting());
                break;
            case 12: {
                const auto all = at.escalations(client);
                if (!all->empty()) {
                    at.acknowledge(client, all->at(upto(all->size())).id, "Sorrel", "rang",
                                   acting());
                }
                break;
            }
            case 13:
                at.note_look(client, upto(2) == 0 ? "review_made" : "trial_read", acting());
                break;
            case 14:
                change(at, client);
                break;
            default:
                trial_or_erasure(at, client);
        }
    }

    void change(SqlitePractice& at, std::int64_t client) {
        const auto wears = at.wears(client);
        if (!wears->empty() && upto(2) == 0) {
            constexpr std::array ends = {WearEnd::fell_off, WearEnd::not_told, WearEnd::still_on};
            at.change_wear(client, wears->at(upto(wears->size())).id, ends.at(upto(ends.size())),
                           {}, acting());
            return;
        }
        auto record = *at.client(client);
        record.facts.agreed_change = a_walk(some_day(), some_day());
        record.facts.zones = {{upto(2) == 0 ? "Asia/Tokyo" : "Europe/Berlin", {}}};
        record.facts.labs.push_back({some_day() - std::chrono::days{88}, "HbA1c", 7.1, "%"});
        at.change_client(record, acting());
    }

    void trial_or_erasure(SqlitePractice& at, std::int64_t client) {
        if (upto(4) == 0) {
            ASSERT_TRUE(at.erase_client(client, acting()));
            std::erase(clients_, client);
            return;
        }
        Trial trial;
        trial.code = "walk-after-dinner";
        trial.question = "Does a walk change the rise?";
        trial.a = "walk";
        trial.b = "no walk";
        trial.seed = 7;
        trial.blocks = blocks_from(some_day(), 6, 0);
        draw_arms(trial.blocks, Draw::fair_coins, 7);
        at.keep_trial(client, trial_document(trial, -1), acting());
        const auto all = at.trials(client);
        if (!all->empty()) {
            at.tell_trial_day(client, all->front().id, trial.first_day(), "a", acting());
        }
    }
};

}  // namespace

// Property: seeds 1 to 10, eighty steps each.
TEST(CaseloadCache, tells_what_reading_everyone_tells_after_any_changes_and_as_time_passes) {
    std::size_t saved = 0;
    std::size_t closed = 0;
    for (unsigned seed = 1; seed <= 10; ++seed) {
        Happening practice(seed);
        CaseloadCache cache(client_of_list);
        for (int step = 0; step < 80; ++step) {
            practice.step();
            const auto told = cache.lines(practice.looked_at(), practice.now());
            ASSERT_TRUE(told) << told.error().sentence;
            ASSERT_EQ(words(*told), read_anew(practice.looked_at(), practice.now()))
                << "seed " << seed << ", step " << step;
            saved += told->size() - cache.read_last();
            for (const std::string& line : words(*told)) {
                closed += line.find("Lows were seen") != std::string::npos ? 1U : 0U;
            }
        }
    }
    EXPECT_GT(saved, 500U);  // else the property says nothing about what is kept
    EXPECT_GT(closed, 50U);  // nor of what is closed
}

TEST(CaseloadCache, lows_seen_close_a_walk_at_every_look) {
    const Folder folder;
    const auto practice = new_practice(folder.file("p"));
    const CivilDate today{std::chrono::floor<days>(at_second(20 * one_day)).time_since_epoch()};
    ClientFacts facts = on_what_can_cause_lows(today - days{40});
    facts.zones = {{"Europe/Berlin", {}}};
    facts.agreed_change = a_walk(today - days{3}, today + days{9});
    const auto client = *practice->add_client("c1", "Tansy (invented)", facts, acting(1));
    ASSERT_TRUE(practice->bring_in(client, file_of(15 * one_day, 2 * 288, 300, 0, 0.6),
                                   WhoseFile::this_client, acting(1)));
    CaseloadCache cache(client_of_list);
    for (const std::int64_t seconds : {0, 30, 3'600}) {
        const auto lines = cache.lines(*practice, at_second(20 * one_day + seconds));
        ASSERT_TRUE(lines) << lines.error().sentence;
        const std::string told = words(*lines).front();
        EXPECT_NE(told.find("What was agreed (\"a walk\") is not to be gone on with now: Lows were "
                            "seen"),
                  std::string::npos)
            << told;
        EXPECT_EQ(cache.read_last(), seconds == 0 ? 1U : 0U);
    }
}

TEST(CaseloadCache, reads_again_only_whom_the_audit_names) {
    const Folder folder;
    const auto practice = new_practice(folder.file("p"));
    std::vector<std::int64_t> clients;
    for (const char* handle : {"c1", "c2", "c3"}) {
        clients.push_back(*practice->add_client(handle, "Somebody", {}, acting(1)));
    }
    CaseloadCache cache(client_of_list);
    ASSERT_TRUE(cache.lines(*practice, at_second(10)));
    EXPECT_EQ(cache.read_last(), 3U);
    ASSERT_TRUE(cache.lines(*practice, at_second(20)));
    EXPECT_EQ(cache.read_last(), 0U);
    ASSERT_TRUE(practice->add_promise(clients[1], "a recipe", CivilDate{}, acting(15)));
    ASSERT_TRUE(cache.lines(*practice, at_second(30)));
    EXPECT_EQ(cache.read_last(), 1U);
    ASSERT_TRUE(practice->note_look(0, "caseload_seen", acting(30)));  // is about nobody
    ASSERT_TRUE(cache.lines(*practice, at_second(40)));
    EXPECT_EQ(cache.read_last(), 0U);
    ASSERT_TRUE(cache.lines(*practice, at_second(5)));  // an earlier moment
    EXPECT_EQ(cache.read_last(), 3U);
}

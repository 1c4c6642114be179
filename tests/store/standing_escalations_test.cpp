// What waits for an answer, against what is kept of a client. Everybody is invented.
#include "store/standing_escalations.hpp"

#include "store/client_export.hpp"
#include "store/diary_book.hpp"
#include "store/practice_for_tests.hpp"

namespace tracewright {
namespace {

class StandingEscalations : public ::testing::Test {
  protected:
    StandingEscalations() : practice(new_practice(folder.file("practice"))) {
        client = *practice->add_client("c1", "Tansy (invented)", {}, acting());
        EXPECT_TRUE(practice->bring_in(client, file_of(0, 288), WhoseFile::not_asked, acting(10)));
        look();
    }

    void look() const {
        const auto facts = practice->client(client)->facts;
        EXPECT_TRUE(record_escalations(*practice, client, facts, acting(100)));
    }
    /// Three quarters of an hour at 45 mg/dL, on the day after.
    void bring_in_a_very_low() const {
        BroughtIn file;
        file.source = "the wrong file";
        for (int i = 0; i < 24; ++i) {
            file.readings.emplace_back(
                at_second(86'400 + i * 300),
                Glucose{i < 6 || i > 15 ? 9000 : 4500, GlucoseUnit::mg_per_dl},
                std::chrono::seconds{300});
            ++file.rows_stored;
        }
        ASSERT_TRUE(practice->bring_in(client, file, WhoseFile::not_asked, acting(20)));
        look();
    }
    std::string exported() const {
        std::string all;
        for (const ExportedFile& file : client_export(*practice->holdings(client, acting()))) {
            all += file.bytes;
        }
        return all;
    }
    std::vector<EscalationRecord> kept() const { return *practice->escalations(client); }

    Folder folder;
    std::unique_ptr<SqlitePractice> practice;
    std::int64_t client = 0;
};

// Task T2: undone, all is as it was before, to the byte.
TEST_F(StandingEscalations, what_an_undone_file_alone_told_of_is_withdrawn) {
    const std::string before = exported();
    const auto stood = kept().size();
    bring_in_a_very_low();
    ASSERT_GT(kept().size(), stood);
    const std::int64_t number = kept().back().id;
    ASSERT_TRUE(practice->undo(client, acting(30)));
    look();
    EXPECT_EQ(kept().size(), stood);
    EXPECT_EQ(exported(), before);
    const auto audit = practice->audit(client);
    EXPECT_TRUE(std::ranges::any_of(*audit, [&](const AuditLine& line) {
        return line.deed == "escalation_withdrawn" && line.number == number;
    }));
}

TEST_F(StandingEscalations, what_was_answered_stays_whatever_became_of_its_data) {
    bring_in_a_very_low();
    const auto records = kept();
    for (const EscalationRecord& record : records) {
        ASSERT_TRUE(practice->acknowledge(client, record.id, "Sorrel", "rang", acting(25)));
    }
    ASSERT_TRUE(practice->undo(client, acting(30)));
    look();
    EXPECT_EQ(kept().size(), records.size());
}

TEST_F(StandingEscalations, a_finger_prick_struck_out_waits_for_nobody) {
    DiaryEntry prick;
    prick.kind = DiaryKind::finger_prick;
    prick.at = at_second(3600);
    prick.text = "finger-prick 2.4 mmol/L";
    prick.glucose = Glucose{240, GlucoseUnit::mmol_per_l};
    BroughtIn file;
    file.source = "jotted";
    file.diary.push_back(prick);
    file.rows_stored = 1;
    const auto stood = kept().size();
    ASSERT_TRUE(practice->bring_in(client, file, WhoseFile::not_asked, acting(20)));
    look();
    ASSERT_GT(kept().size(), stood);
    DiaryBook book(*practice);
    const auto records = book.entries(client, {at_second(0), at_second(86'400)});
    ASSERT_TRUE(book.correct(client, records->front().id, std::nullopt, acting(30)));
    look();
    EXPECT_EQ(kept().size(), stood);
}

// Safety rule 2: nothing but the data takes it away.
TEST_F(StandingEscalations, the_end_of_a_change_takes_no_low_after_it_away) {
    auto record = *practice->client(client);
    record.facts.agreed_change.emplace();
    record.facts.agreed_change->words = "a walk";
    record.facts.agreed_change->agreed_on =
        CivilDate{std::chrono::floor<std::chrono::days>(at_second(0).time_since_epoch())};
    ASSERT_TRUE(practice->change_client(record, acting(11)));
    bring_in_a_very_low();
    const auto stood = kept().size();
    ASSERT_TRUE(std::ranges::any_of(kept(), [](const EscalationRecord& one) {
        return one.event.starts_with("low_after_change");
    }));
    record = *practice->client(client);
    record.facts.agreed_change.reset();
    ASSERT_TRUE(practice->change_client(record, acting(12)));
    look();
    EXPECT_EQ(kept().size(), stood);
}

// Safety rule 2: what is told of medicines later was not the list on that day for sure.
TEST_F(StandingEscalations, a_list_of_medicines_told_later_takes_nothing_away) {
    auto record = *practice->client(client);
    const CivilDate asked{std::chrono::floor<std::chrono::days>(at_second(0).time_since_epoch())};
    const auto takes = [&](const std::vector<std::string>& written, std::int64_t at) {
        record = *practice->client(client);
        record.facts.medicines_asked_on = asked;
        record.facts.medicines.clear();
        for (const std::string& one : written) {
            record.facts.medicines.push_back({one, {}, {}});
        }
        ASSERT_TRUE(practice->change_client(record, acting(at)));
        look();
    };
    takes({"empagliflozin 10 mg", "gliclazide 30 mg"}, 11);
    BroughtIn file;
    file.source = "two lows and a symptom";
    for (int i = 0; i < 48; ++i) {
        const bool low = (i > 5 && i < 12) || (i > 29 && i < 36);
        file.readings.emplace_back(at_second(86'400 + i * 300),
                                   Glucose{low ? 6500 : 9000, GlucoseUnit::mg_per_dl},
                                   std::chrono::seconds{300});
        ++file.rows_stored;
    }
    DiaryEntry symptom;
    symptom.kind = DiaryKind::symptom;
    symptom.at = at_second(86'400);
    symptom.written = WallTime{symptom.at.time_since_epoch()};
    symptom.text = "nausea and belly pain";
    file.diary.push_back(symptom);
    ++file.rows_stored;
    ASSERT_TRUE(practice->bring_in(client, file, WhoseFile::not_asked, acting(20)));
    look();
    const auto has = [&](const char* kind) {
        return std::ranges::any_of(
            kept(), [&](const EscalationRecord& one) { return one.event.starts_with(kind); });
    };
    ASSERT_TRUE(has("symptom_with_sglt2"));
    ASSERT_TRUE(has("lows_in_7_days"));
    const auto stood = kept().size();
    takes({"metformin 500"}, 21);
    EXPECT_EQ(kept().size(), stood);
    ASSERT_TRUE(practice->undo(client, acting(30)));
    look();
    EXPECT_FALSE(has("symptom_with_sglt2"));
    EXPECT_FALSE(has("lows_in_7_days"));
}

}  // namespace
}  // namespace tracewright

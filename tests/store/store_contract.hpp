#pragma once

#include "store/client_export.hpp"
#include "store/practice_for_tests.hpp"

#include <gtest/gtest.h>

#include <functional>
#include <memory>
#include <string>

namespace tracewright {

struct Backend {
    const char* name;
    std::function<std::unique_ptr<PracticeStore>(const Folder&)> fresh;
};

class StoreContract : public ::testing::TestWithParam<Backend> {
  protected:
    void SetUp() override {
        store = GetParam().fresh(folder);
        ASSERT_NE(store, nullptr);
        client = *store->add_client("c1", "Tansy (invented)", facts(), acting());
    }
    static ClientFacts facts() {
        ClientFacts facts;
        facts.why_they_came = "To sleep through";
        facts.zones.push_back({"Europe/Berlin", {}});
        facts.medicines.push_back({"metformin 1000", {}, {}});
        return facts;
    }
    std::string exported() {
        std::string all;
        const auto holdings = store->holdings(client, acting());
        for (const auto& file : client_export(*holdings)) {
            all += file.name + "\n" + file.bytes;
        }
        return all;
    }
    ImportOutcome brought(BroughtIn file, WhoseFile whose = WhoseFile::not_asked) {
        const std::uint64_t read = file.rows_read();
        auto outcome = store->bring_in(client, std::move(file), whose, acting(60));
        EXPECT_TRUE(outcome) << outcome.error().sentence;
        const ImportPlan& plan = outcome->plan;
        EXPECT_EQ(plan.rows_stored + plan.rows_duplicate + plan.rows_conflict + plan.rows_rejected,
                  read);
        return std::move(*outcome);
    }
    std::size_t readings() {
        std::size_t count = 0;
        const auto wears = store->wears(client);
        for (const StoredWear& wear : *wears) {
            count += wear.wear.readings.size();
        }
        return count;
    }

    Folder folder;
    std::unique_ptr<PracticeStore> store;
    std::int64_t client = 0;
};

}  // namespace tracewright

#pragma once

#include "serve/served_practice.hpp"

#include <map>
#include <set>
#include <string>

namespace tracewright::testing {

/// A practice served, with docs/api/openapi.json beside it: what is asked is held to what is
/// described.
class DescribedApi : public ::testing::Test {
  protected:
    /// Asks, and holds the reply to what is described of it.
    Got ask(int expected, const std::string& method, const std::string& pattern,
            const std::string& target, const Sitting& who, const nlohmann::json& body = {},
            const std::map<std::string, std::string>& headers = {});
    /// The same of a file's bytes.
    Got ask_with_file(int expected, const std::string& pattern, const std::string& target,
                      const Sitting& who, const std::string& bytes,
                      const std::string& type = "application/octet-stream");
    Got held(int expected, const std::string& name, const std::string& pattern, Got got);
    void fits(const nlohmann::json& described, const Got& got, const std::string& where);
    /// What every change to a client may meet, asked with a body that fits.
    void ask_as_anybody(const std::string& pattern, const std::string& target,
                        const std::string& of_nobody, const nlohmann::json& body,
                        const Sitting& reader, const Sitting& owner);
    // One part of the API each: every status of it.
    void ask_of_imports(const Sitting& owner, const Sitting& reader);
    void ask_of_the_diary(const Sitting& owner, const Sitting& reader);
    void ask_of_photos(const Sitting& owner, const Sitting& reader, int meal);
    void ask_of_clients(const Sitting& owner, const Sitting& reader);
    void ask_of_trust(const Sitting& owner, const Sitting& reader);
    void ask_of_shares(const Sitting& owner, const Sitting& reader);
    void ask_of_safekeeping(const Sitting& owner, const Sitting& reader);

    nlohmann::json api = described_api();
    nlohmann::json schemas = all_schemas(api);
    ServedPractice served;
    std::set<std::string> met;  ///< "get /api/clients 200"

  private:
    static nlohmann::json described_api();
    static nlohmann::json all_schemas(const nlohmann::json& api);
};

}  // namespace tracewright::testing

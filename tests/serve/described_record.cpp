// The parts of the API by which a client's record is told, asked for every status described.
#include "access/recovery_key.hpp"
#include "intake/invented_photo.hpp"
#include "serve/described_api.hpp"

namespace tracewright::testing {

using nlohmann::json;

void DescribedApi::ask_of_imports(const Sitting& owner, const Sitting& reader) {
    const std::string place = "/api/clients/{handle}/imports";
    const std::string file = "Time,Glucose mg/dL\n2026-03-08 08:00,120\n2026-03-08 08:05,124\n";
    for (const std::string rest : {"/preview", ""}) {
        const auto of = [&](const std::string& handle) {
            return "/api/clients/" + handle + "/imports" + rest + "?name=a.csv";
        };
        ask_with_file(401, place + rest, of("c2"), {}, file);
        ask_with_file(403, place + rest, of("c2"), reader, file);
        ask_with_file(404, place + rest, of("nobody"), owner, file);
        ask_with_file(415, place + rest, of("c2"), owner, file, "text/csv");
        ask_with_file(422, place + rest, of("c2"), owner, "no table");
        ask_with_file(rest.empty() ? 201 : 200, place + rest, of("c2"), owner, file);
        ask_with_file(200, place + rest, of("c2"), owner, "Time,Glucose\n01/02/2026 08:00,120\n");
    }
    ask(200, "GET", place, "/api/clients/c2/imports", owner);
    ask(401, "GET", place, "/api/clients/c2/imports", {});
    ask(404, "GET", place, "/api/clients/nobody/imports", owner);
    const auto undo = [&](const std::string& number) {
        return "/api/clients/c2/imports/" + number + "/undo";
    };
    const std::string pattern = place + "/{id}/undo";
    const auto newest = [&] {
        return std::to_string(
            served.get("/api/clients/c2/imports", owner).json()["imports"][0]["id"].get<int>());
    };
    const std::string first = newest();
    ask(401, "POST", pattern, undo(first), {});
    ask(403, "POST", pattern, undo(first), reader);
    ask(404, "POST", pattern, undo("1"), owner);  // another client's
    ask_with_file(201, place, "/api/clients/c2/imports?name=b.csv", owner,
                  "Time,Glucose mg/dL\n2026-03-09 08:00,120\n2026-03-09 08:05,124\n");
    ask(422, "POST", pattern, undo(first), owner);
    ask(204, "POST", pattern, undo(newest()), owner);
}

void DescribedApi::ask_of_the_diary(const Sitting& owner, const Sitting& reader) {
    const std::string client = "/api/clients/{handle}";
    const auto of = [](const std::string& rest, const std::string& handle = "c2") {
        return "/api/clients/" + handle + rest;
    };
    const json message{{"text", "8:10 porridge"}, {"day", "2026-03-10"}, {"foods", json::array()}};
    for (const std::string rest : {"/diary/preview", "/diary"}) {
        ask_as_anybody(client + rest, of(rest), of(rest, "nobody"), message, reader, owner);
        ask(rest == "/diary" ? 201 : 200, "POST", client + rest, of(rest), owner, message);
    }
    ask(200, "POST", client + "/diary", of("/diary"), owner, message);
    const std::string day = client + "/diary/{date}";
    ask(401, "GET", day, of("/diary/2026-03-10"), {});
    ask(404, "GET", day, of("/diary/2026-03-10", "nobody"), owner);
    ask(422, "GET", day, of("/diary/soon"), owner);
    const json entry = ask(200, "GET", day, of("/diary/2026-03-10"), owner).json()["entries"][0];
    ask(200, "GET", client + "/foods", of("/foods?words=oats"), owner);
    ask(401, "GET", client + "/foods", of("/foods?words=oats"), {});
    ask(404, "GET", client + "/foods", of("/foods?words=oats", "nobody"), owner);

    const std::string number = std::to_string(entry["id"].get<int>());
    const auto at = [&](const std::string& rest) {
        return of("/diary/entries/" + number + "/" + rest);
    };
    const std::string correct = client + "/diary/entries/{id}/correct";
    json form = entry["form"];
    ask_as_anybody(correct, at("correct"), of("/diary/entries/999/correct"), form, reader, owner);
    ask(409, "POST", correct, at("correct"), owner, form);
    form["text"] = "oats";
    ask(200, "POST", correct, at("correct"), owner, form);
    const auto fresh = served.get(of("/diary/2026-03-10"), owner).json()["entries"][0];
    const std::string strike = client + "/diary/entries/{id}/strike";
    const std::string target =
        of("/diary/entries/" + std::to_string(fresh["id"].get<int>()) + "/strike");
    ask(401, "POST", strike, target, {});
    ask(403, "POST", strike, target, reader);
    ask_of_photos(owner, reader, fresh["id"].get<int>());
    ask(200, "POST", strike, target, owner);
    ask(404, "POST", strike, target, owner);
}

void DescribedApi::ask_of_photos(const Sitting& owner, const Sitting& reader, int meal) {
    const std::string client = "/api/clients/{handle}";
    const auto of = [](const std::string& rest) { return "/api/clients/c2" + rest; };
    const std::string add = client + "/diary/entries/{id}/photos";
    const std::string to = of("/diary/entries/" + std::to_string(meal) + "/photos");
    const std::string jpeg = jpeg_of(32, 16);
    ask_with_file(401, add, to, {}, jpeg);
    ask_with_file(403, add, to, reader, jpeg);
    ask_with_file(404, add, of("/diary/entries/999/photos"), owner, jpeg);
    ask_with_file(415, add, to, owner, jpeg, "image/jpeg");
    ask_with_file(422, add, to, owner, "no photo");
    const std::string number = ask_with_file(201, add, to, owner, jpeg).json()["id"].dump();
    const std::string list = client + "/photos";
    ask(200, "GET", list, of("/photos"), owner);
    ask(401, "GET", list, of("/photos"), {});
    ask(404, "GET", list, "/api/clients/nobody/photos", owner);
    ask(200, "GET", list + "/{id}", of("/photos/" + number), owner);
    ask(401, "GET", list + "/{id}", of("/photos/" + number), {});
    ask(404, "GET", list + "/{id}", of("/photos/999"), owner);
    const std::string remove = list + "/{id}/remove";
    ask(401, "POST", remove, of("/photos/" + number + "/remove"), {});
    ask(403, "POST", remove, of("/photos/" + number + "/remove"), reader);
    ask(404, "POST", remove, of("/photos/999/remove"), owner);
    ask(204, "POST", remove, of("/photos/" + number + "/remove"), owner);
}

void DescribedApi::ask_of_clients(const Sitting& owner, const Sitting& reader) {
    const json added{{"name", "Invented"}, {"changes", json::object()}};
    ask(401, "POST", "/api/clients", "/api/clients", {}, added);
    ask(403, "POST", "/api/clients", "/api/clients", reader, added);
    ask(400, "POST", "/api/clients", "/api/clients", owner, json::array());
    ask(415, "POST", "/api/clients", "/api/clients", owner, added, {{"Content-Type", "text/xml"}});
    ask(422, "POST", "/api/clients", "/api/clients", owner, json::object());
    const Got got = ask(201, "POST", "/api/clients", "/api/clients", owner, added);
    const std::string handle = got.json()["handle"];
    const std::string client = "/api/clients/{handle}";
    const auto of = [&](const std::string& rest) { return "/api/clients/" + handle + rest; };
    const json was{{"revision", served.get(of(""), owner).json()["revision"]},
                   {"name", "Invented"},
                   {"changes", {{"why_they_came", "Invented"}}}};
    ask_as_anybody(client + "/facts", of("/facts"), "/api/clients/nobody/facts", was, reader,
                   owner);
    ask(200, "POST", client + "/facts", of("/facts"), owner, was);
    ask(409, "POST", client + "/facts", of("/facts"), owner, was);
    const std::string copy = client + "/export/{file}";
    ask(401, "GET", copy, of("/export/client.json"), {});
    ask(403, "GET", copy, of("/export/client.json"), reader);
    ask(404, "GET", copy, of("/export/secrets"), owner);
    ask(200, "GET", copy, of("/export/client.json"), owner);
    const json erased{{"confirm", handle}, {"without_export", "no"}};
    ask_as_anybody(client + "/erase", of("/erase"), "/api/clients/nobody/erase", erased, reader,
                   owner);
    ask(204, "POST", client + "/erase", of("/erase"), owner, erased);
}

void DescribedApi::ask_of_trust(const Sitting& owner, const Sitting& reader) {
    const std::string client = "/api/clients/{handle}";
    const auto of = [](const std::string& rest, const std::string& handle = "c1") {
        return "/api/clients/" + handle + rest;
    };
    const json trust = ask(200, "GET", client + "/trust", of("/trust"), owner).json();
    ask(401, "GET", client + "/trust", of("/trust"), {});
    ask(404, "GET", client + "/trust", of("/trust", "nobody"), owner);
    ask(422, "GET", client + "/trust", of("/trust") + "?from=yesterday", owner);
    const json mark{{"from", "2026-02-27T02:00"}, {"to", "2026-02-27T04:00"}, {"why", "x"}};
    ask_as_anybody(client + "/stretches", of("/stretches"), of("/stretches", "nobody"), mark,
                   reader, owner);
    const Got told = ask(201, "POST", client + "/stretches", of("/stretches"), owner, mark);
    const json& first = trust["stretches"][0];
    const json count{{"begins", first["begins"]}, {"ends", first["ends"]}, {"why", "x"}};
    ask_as_anybody(client + "/stretches/count", of("/stretches/count"),
                   of("/stretches/count", "nobody"), count, reader, owner);
    ask(201, "POST", client + "/stretches/count", of("/stretches/count"), owner, count);
    ask(200, "GET", client + "/trust", of("/trust"), owner);
    const std::string back = client + "/stretches/{id}/take-back";
    const std::string target =
        of("/stretches/" + std::to_string(told.json()["id"].get<int>()) + "/take-back");
    ask(401, "POST", back, target, {});
    ask(403, "POST", back, target, reader);
    ask(204, "POST", back, target, owner);
    ask(404, "POST", back, target, owner);
    const std::string counted = client + "/counted-wear";
    const json choice{{"wear", "wear 1"}, {"chosen", true}};
    ask_as_anybody(counted, of("/counted-wear"), of("/counted-wear", "nobody"), choice, reader,
                   owner);
    ask(204, "POST", counted, of("/counted-wear"), owner, choice);
}

void DescribedApi::ask_of_shares(const Sitting& owner, const Sitting& reader) {
    const std::string place = "/api/clients/{handle}/shares";
    const json share{{"recipient", "Reed (invented)"},
                     {"purpose", "to help at night"},
                     {"kinds", "lows"},
                     {"days", "14"},
                     {"until", "2026-04-08"}};
    ask_as_anybody(place, "/api/clients/c1/shares", "/api/clients/nobody/shares", share, reader,
                   owner);
    {
        const auto practice = opened_practice(served.path());
        auto record = *practice->client(1);
        record.facts.consent.given_on = CivilDate{std::chrono::days{20'000}};
        ASSERT_TRUE(practice->change_client(record, acting()));
    }
    const json told = ask(201, "POST", place, "/api/clients/c1/shares", owner, share).json();
    const std::string address = told["address"];
    ask(200, "GET", "/share/{token}", address, {});
    ask(403, "GET", "/share/{token}", "/share/none", {});
    ask(200, "GET", "/share/{token}/{kind}", address + "/lows", {});
    ask(403, "GET", "/share/{token}/{kind}", address + "/mood", {});
    const auto revoke = [&](const std::string& handle) {
        return "/api/clients/" + handle + "/shares/" + std::to_string(told["id"].get<int>()) +
               "/revoke";
    };
    ask(401, "POST", place + "/{id}/revoke", revoke("c1"), {});
    ask(403, "POST", place + "/{id}/revoke", revoke("c1"), reader);
    ask(404, "POST", place + "/{id}/revoke", revoke("c2"), owner);
    ask(204, "POST", place + "/{id}/revoke", revoke("c1"), owner);
    ask(200, "GET", place, "/api/clients/c1/shares", owner);
    ask(401, "GET", place, "/api/clients/c1/shares", {});
    ask(404, "GET", place, "/api/clients/nobody/shares", owner);
}

void DescribedApi::ask_of_safekeeping(const Sitting& owner, const Sitting& reader) {
    const std::string audit = "/api/audit";
    EXPECT_FALSE(ask(200, "GET", audit, audit, owner).json()["lines"].empty());
    ask(200, "GET", audit, audit + "?before=5&client=c1", reader);
    ask(401, "GET", audit, audit, {});
    ask(404, "GET", audit, audit + "?client=nobody", owner);
    ask(422, "GET", audit, audit + "?before=yesterday", owner);

    const std::string backup = "/api/backup";
    const std::string list = backup + "/erased";
    ask(200, "GET", backup, backup, reader);
    ask(401, "GET", backup, backup, {});
    ask(401, "POST", backup, backup, {});
    ask(403, "POST", backup, backup, reader);
    ask(200, "POST", backup, backup, owner);
    ask(200, "GET", backup, backup, owner);
    ask(401, "GET", list, list, {});
    ask(403, "GET", list, list, reader);
    ask(200, "GET", list, list, owner);

    const std::string told = "/api/recovery-key";
    const std::string place = told + "/try";
    const json right{{"key", written_recovery_key(recovery_key_for_tests())}};
    const json wrong{{"key", written_recovery_key(key_for_tests())}};
    ask(200, "GET", told, told, reader);
    ask(401, "GET", told, told, {});
    ask(401, "POST", place, place, {}, right);
    ask(403, "POST", place, place, reader, right);
    ask(400, "POST", place, place, owner, json::array());
    ask(415, "POST", place, place, owner, right, {{"Content-Type", "text/xml"}});
    ask(422, "POST", place, place, owner, json::object());
    ask(422, "POST", place, place, owner, {{"key", "none"}});
    ask(200, "POST", place, place, owner, right);
    for (std::size_t i = 0; i < TryRules{}.of_one; ++i) {
        ask(200, "POST", place, place, owner, wrong);
    }
    ask(429, "POST", place, place, owner, right);
    ask(200, "GET", told, told, owner);
}

}  // namespace tracewright::testing

#include "practice_folder.hpp"

#include "set_up_papers.hpp"

#include <filesystem>
#include <fstream>

namespace tracewright {

namespace fs = std::filesystem;

bool write_file(const std::string& path, const std::string& bytes) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    return !file.fail();
}

std::vector<PracticeClient> practice_clients(std::uint64_t seed) {
    std::vector<PracticeClient> clients;
    for (const ClientStory& story : client_stories()) {
        ClientLife life = client_life(story, seed);
        std::vector<ClientFile> files = client_files(life);
        clients.push_back({std::move(life), std::move(files)});
    }
    return clients;
}

tl::expected<int, std::string> write_practice(const std::vector<PracticeClient>& clients,
                                              const std::string& folder, std::uint64_t seed) {
    int written = 0;
    for (const PracticeClient& client : clients) {
        const fs::path into = fs::path(folder) / client.life.story.key;
        std::error_code failure;
        fs::create_directories(into, failure);
        if (failure) {
            return tl::unexpected(into.string() + ": " + failure.message());
        }
        for (const ClientFile& file : client.files) {
            const std::string path = (into / file.name).string();
            const bool done = file.dialect.workbook ? write_workbook(file.table, path)
                                                    : write_file(path, file.bytes());
            if (!done) {
                return tl::unexpected(path + ": can't be written");
            }
            ++written;
        }
    }
    const std::string text = practice_manifest(clients, seed);
    const std::string manifest = (fs::path(folder) / "practice.json").string();
    if (!write_file(manifest, text)) {
        return tl::unexpected(manifest + ": can't be written");
    }
    std::error_code failure;
    fs::create_directories(fs::path(folder) / "set-up", failure);
    for (const auto& [name, bytes] : set_up_papers(text)) {
        const std::string path = (fs::path(folder) / "set-up" / name).string();
        if (!write_file(path, bytes)) {
            return tl::unexpected(path + ": can't be written");
        }
        ++written;
    }
    return written + 1;
}

}  // namespace tracewright

// Writes the invented practice, or files for benchmarks.
#include "corpus.hpp"
#include "practice_folder.hpp"

#include <CLI/CLI.hpp>

#include <exception>
#include <iostream>
#include <string>

namespace {

using namespace tracewright;

int told(const tl::expected<int, std::string>& written, const std::string& where) {
    if (!written) {
        std::cerr << "tracewright_demo: " << written.error() << "\n";
        return 1;
    }
    std::cout << *written << " invented files written to " << where << "\n";
    return 0;
}

int run(int argc, char** argv) {
    CLI::App app{"Writes the invented practice: twelve clients, sixteen weeks, no real person."};
    std::uint64_t seed = 1;
    std::string out;
    std::string year_file;
    CorpusPlan plan;
    app.add_option("--seed", seed, "Another number makes other lives of the same stories");
    auto* folder = app.add_option("--out", out, "Folder to write to");
    auto* corpus = app.add_option("--corpus", plan.files, "Instead: so many single wears")
                       ->check(CLI::Range(1, 100'000))
                       ->needs(folder);
    app.add_option("--days", plan.days, "Of each wear of the corpus")
        ->check(CLI::Range(1, 3660))
        ->needs(corpus);
    app.add_option("--interval", plan.interval_minutes, "Of the corpus, in minutes")
        ->check(CLI::Range(1, 60))
        ->needs(corpus);
    auto* year = app.add_option("--minutes-year", year_file,
                                "Instead: one year of 1-minute readings into this file");
    CLI11_PARSE(app, argc, argv);
    plan.seed = seed;
    if (*year) {
        const CorpusPlan minutes{.files = 1, .days = 365, .interval_minutes = 1, .seed = seed};
        if (!write_file(year_file, corpus_wear(minutes, 0))) {
            return told(tl::unexpected(year_file + ": can't be written"), year_file);
        }
        return told(1, year_file);
    }
    if (out.empty()) {
        std::cerr << app.help();
        return 2;
    }
    if (*corpus) {
        return told(write_corpus(plan, out), out);
    }
    return told(write_practice(practice_clients(seed), out, seed), out);
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& failure) {
        std::cerr << "tracewright_demo: " << failure.what() << "\n";
        return 1;
    }
}

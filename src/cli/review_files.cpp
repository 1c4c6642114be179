#include "cli/review_files.hpp"

#include "cli/json_text.hpp"
#include "render/review_pages.hpp"
#include "store/whole_file.hpp"

#include <filesystem>
#include <future>
#include <ostream>

namespace tracewright {

namespace {

namespace fs = std::filesystem;

bool write_file(const fs::path& path, const std::string& bytes, const Streams& streams) {
    if (!write_whole_file(path.string(), std::string_view(bytes))) {
        streams.err << path.string()
                    << ": found no way to write here, expected a folder with room\n";
        return false;
    }
    return true;
}

}  // namespace

bool write_review(const FirstReview& review, const std::string& out, const Streams& streams) {
    std::error_code error;
    fs::create_directories(out, error);
    const fs::path folder(out);
    // The page for the screen is made while the longer work of print goes on.
    auto page = std::async(std::launch::async, [&] { return review_html(review); });
    const std::string print = review_pdf(review);
    const bool written =
        write_file(folder / "review.html", page.get(), streams) &&
        write_file(folder / "review.pdf", print, streams) &&
        write_file(folder / "review.json", dumped(json_of_review(review)), streams);
    if (!written) {
        return false;
    }
    for (const Finding& finding : review.findings) {
        streams.out << "- " << finding.sentence << "\n";
    }
    streams.out << review.last_reading << "\nThe review is in " << (folder / "review.html").string()
                << " and " << (folder / "review.pdf").string() << "\n";
    return true;
}

}  // namespace tracewright

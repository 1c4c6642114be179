#include "cli/review_command.hpp"

#include "cli/files_of_client.hpp"
#include "cli/review_files.hpp"
#include "findings/first_review.hpp"

namespace tracewright {

Exit review(const FileOptions& options, const std::vector<std::string>& diaries,
            const std::string& out, const Streams& streams) {
    auto files = files_of_client(options, diaries, streams, streams.out);
    if (!files) {
        return files.error();
    }
    const FirstReview review = first_review(std::move(files->input));
    if (!write_review(review, out, streams)) {
        return Exit::bad_input;
    }
    return files->exit;
}

}  // namespace tracewright

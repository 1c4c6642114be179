#include "cli/review_command.hpp"

#include "cli/files_of_client.hpp"
#include "cli/review_files.hpp"
#include "coaching/client_medicines.hpp"
#include "coaching/trial_offers.hpp"
#include "findings/first_review.hpp"

namespace tracewright {

Exit review(const FileOptions& options, const std::vector<std::string>& diaries,
            const std::string& out, const Streams& streams) {
    auto files = files_of_client(options, diaries, streams, streams.out);
    if (!files) {
        return files.error();
    }
    FirstReview review = first_review(std::move(files->input));
    // Nothing is known of the client: that counts as risky (safety rules 7 to 12).
    const ClientFacts facts;
    const ReviewInput& input = review.input;
    const MedicineTimeline medicines = client_medicines(facts, input.zones);
    withhold_trials(review, {facts, input.wears, input.diary, medicines, input.zones, input.as_of},
                    Licence::none);
    if (!write_review(review, out, streams)) {
        return Exit::bad_input;
    }
    return files->exit;
}

}  // namespace tracewright

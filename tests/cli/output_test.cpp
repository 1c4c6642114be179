// What a command tells, arrives or is called not done.
#include "cli/command_for_tests.hpp"

#include <gmock/gmock.h>

#include <stdexcept>

namespace tracewright::testing {
namespace {

using ::testing::HasSubstr;

struct Full : std::streambuf {};  // a file system without room

struct Throwing : std::streambuf {
    int overflow(int) override { throw std::logic_error("a word of a client's"); }
    std::streamsize xsputn(const char*, std::streamsize) override {
        throw std::logic_error("a word of a client's");
    }
};

TEST(Output, that_can_not_be_written_is_not_done) {
    Full full;
    std::ostream out(&full);
    std::ostringstream err;
    EXPECT_EQ(run_command({"--version"}, {out, err, false, {}, PassphraseWork::least}),
              Exit::bad_input);
    EXPECT_THAT(err.str(), HasSubstr("no way to write all of the output"));
}

TEST(Output, a_fault_of_the_program_ends_the_command_with_a_line) {
    Throwing throwing;
    std::ostream out(&throwing);
    out.exceptions(std::ios::badbit);
    std::ostringstream err;
    EXPECT_EQ(run_command({"--version"}, {out, err, false, {}, PassphraseWork::least}),
              Exit::bad_input);
    EXPECT_EQ(err.str(), "tracewright: found a fault of the program here; it did no more\n");
}

}  // namespace
}  // namespace tracewright::testing

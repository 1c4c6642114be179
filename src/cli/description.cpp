#include "cli/command_line.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace tracewright {

namespace {

std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : text) {
        result += c == '-' ? "\\-" : c == '\\' ? "\\\\" : std::string(1, c);
    }
    return result;
}

bool shown(const CLI::Option* option) {
    return !option->get_group().empty();
}

std::string options_of(const CLI::App& app) {
    std::string text;
    for (const CLI::Option* option : app.get_options(shown)) {
        const bool positional = option->get_positional();
        const std::string name =
            positional ? option->get_name(true) : option->get_name(false, true);
        const bool takes_value = !positional && option->get_expected_min() > 0;
        text +=
            fmt::format(".TP\n.B {}{}\n{}\n", escaped(name), takes_value ? " \\fIVALUE\\fR" : "",
                        escaped(option->get_description()));
    }
    return text;
}

std::string words_of(const CLI::App& app) {
    std::string words;
    for (const CLI::Option* option : app.get_options(shown)) {
        if (!option->get_positional()) {
            for (const std::string& name : option->get_lnames()) {
                words += " --" + name;
            }
        }
    }
    return words;
}

bool any_subcommand(const CLI::App*) {
    return true;
}

// A command that is given as it stands, with all words before it: "client add".
struct Given {
    std::string words;
    const CLI::App* command;
};

std::vector<Given> commands_of(const CLI::App& app, const std::string& before = "") {
    std::vector<Given> all;
    for (const CLI::App* command : app.get_subcommands(any_subcommand)) {
        const Given given{before + command->get_name(), command};
        const auto within = commands_of(*command, given.words + " ");
        // One that can be given alone, or with another word behind it, is both.
        if (within.empty() || command->get_require_subcommand_min() == 0) {
            all.push_back(given);
        }
        all.insert(all.end(), within.begin(), within.end());
    }
    return all;
}

std::string synopsis_of(const Given& given) {
    std::string line = fmt::format(".B tracewright {}\n", escaped(given.words));
    for (const CLI::Option* option : given.command->get_options(shown)) {
        if (option->get_positional()) {
            const std::string more = option->get_items_expected_max() > 1 ? "..." : "";
            const std::string name = escaped(option->get_name(true)) + more;
            line += option->get_required() ? fmt::format(".I {}\n", name)
                                           : fmt::format(".RI [ {} ]\n", name);
        }
    }
    return line + ".RI [ options ]\n.br\n";
}

}  // namespace

std::string man_page(const CLI::App& app) {
    std::string page =
        ".TH TRACEWRIGHT 1\n.SH NAME\ntracewright \\- a coach's workbench for glucose sensor "
        "wears and diaries\n.SH SYNOPSIS\n";
    const auto commands = commands_of(app);
    for (const Given& given : commands) {
        page += synopsis_of(given);
    }
    page +=
        ".SH DESCRIPTION\n" + escaped(app.get_description()) + "\n.SH OPTIONS\n" + options_of(app);
    for (const Given& given : commands) {
        page += fmt::format(".SH {}\n{}\n{}", escaped("COMMAND " + given.words),
                            escaped(given.command->get_description()), options_of(*given.command));
    }
    page +=
        ".SH EXIT STATUS\n.TP\n.B 0\ndone\n.TP\n.B 1\ncan't be answered: the data hold no answer, "
        "or a "
        "question must be answered first\n.TP\n.B 2\nwrong usage\n.TP\n.B 3\nbad input in any "
        "file; the "
        "others were still done\n";
    return page;
}

std::string bash_completion(const CLI::App& app) {
    const auto names_of = [](const CLI::App& of) {
        std::string names;
        for (const CLI::App* command : of.get_subcommands(any_subcommand)) {
            names += (names.empty() ? "" : " ") + command->get_name();
        }
        return names;
    };
    // The longer words stand before what they begin with: the first case that fits is taken.
    std::string within;
    std::string cases;
    for (const CLI::App* command : app.get_subcommands(any_subcommand)) {
        for (const CLI::App* next : command->get_subcommands(any_subcommand)) {
            within += fmt::format("        \"{} {}\"*) words=\"{}\" ;;\n", command->get_name(),
                                  next->get_name(), words_of(*next));
        }
        cases += fmt::format("        \"{} \"*) words=\"{}{}\" ;;\n", command->get_name(),
                             names_of(*command), words_of(*command));
    }
    return fmt::format(
        "_tracewright() {{\n"
        "    local current=\"${{COMP_WORDS[COMP_CWORD]}}\" words=\"\"\n"
        "    case \"${{COMP_WORDS[1]}} ${{COMP_WORDS[2]}} \" in\n{}{}"
        "        *) words=\"{}{}\" ;;\n"
        "    esac\n"
        "    COMPREPLY=($(compgen -W \"$words\" -- \"$current\") $(compgen -f -- \"$current\"))\n"
        "}}\n"
        "complete -o filenames -F _tracewright tracewright\n",
        within, cases, names_of(app), words_of(app));
}

}  // namespace tracewright

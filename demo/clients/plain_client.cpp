#include "clients.hpp"
#include "plates.hpp"

namespace tracewright {

ClientStory plain_client(const std::string& key, const std::string& tree) {
    ClientStory story;
    story.key = key;
    story.name = "Client " + tree + " (invented)";
    story.breakfasts = plates::breakfasts();
    story.lunches = plates::lunches();
    story.snacks = plates::snacks();
    story.dinners = plates::dinners();
    return story;
}

std::vector<ClientStory> client_stories() {
    return {client_alder(), client_aspen(), client_birch(),  client_cedar(),
            client_elder(), client_hazel(), client_larch(),  client_linden(),
            client_maple(), client_rowan(), client_willow(), client_yarrow()};
}

}  // namespace tracewright

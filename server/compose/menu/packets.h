// What sizes things are sold in where a household shops. People note them at the shopping of one event;
// they hold for the next one, too.
#pragma once

#include <string>
#include <vector>

#include "suppertide/v1/shopping.pb.h"

namespace suppertide::compose {

// Each thing once: what `eventId` itself has noted, else what was noted last at any other event.
std::vector<v1::Packet> householdPackets(const std::vector<v1::Shopping>& shoppings,
                                         const std::string& eventId = "");

// The packet of what a recipe calls `name`; null without one.
const v1::Packet* packetOf(const std::vector<v1::Packet>& packets, const std::string& name);

}  // namespace suppertide::compose

#include "server/compose/menu/packets.h"

#include <algorithm>

#include "server/kitchen/menu/shopping.h"

namespace suppertide::compose {

std::vector<v1::Packet> householdPackets(const std::vector<v1::Shopping>& shoppings,
                                         const std::string& eventId) {
  std::vector<const v1::Shopping*> newest;
  for (const v1::Shopping& one : shoppings) newest.push_back(&one);
  std::stable_sort(newest.begin(), newest.end(), [&](const v1::Shopping* a, const v1::Shopping* b) {
    if ((a->id() == eventId) != (b->id() == eventId)) return a->id() == eventId;
    return a->meta().update_time().seconds() > b->meta().update_time().seconds();
  });
  std::vector<v1::Packet> packets;
  for (const v1::Shopping* one : newest)
    for (const v1::Packet& packet : one->packets())
      if (packetOf(packets, packet.name()) == nullptr) packets.push_back(packet);
  return packets;
}

const v1::Packet* packetOf(const std::vector<v1::Packet>& packets, const std::string& name) {
  const std::string wanted = kitchen::boughtKey(name);
  for (const v1::Packet& packet : packets)
    if (kitchen::boughtKey(packet.name()) == wanted) return &packet;
  return nullptr;
}

}  // namespace suppertide::compose

#include "language/phrase_trie.h"

#include <algorithm>

namespace witnessmark {

void PhraseTrie::insert(const Slot& slot) {
  std::uint64_t i = place_of(slot.from, slot.form) & mask_;
  while (slots_[i].to != 0) i = (i + 1) & mask_;
  slots_[i] = slot;
  ++used_;
}

void PhraseTrie::grow() {
  std::vector<Slot> old = std::move(slots_);
  slots_.assign(std::max<std::size_t>(64, old.size() * 2), Slot{});
  mask_ = slots_.size() - 1;
  used_ = 0;
  for (const Slot& slot : old) {
    if (slot.to != 0) insert(slot);
  }
}

void PhraseTrie::add(std::span<const std::uint64_t> forms, std::uint32_t value) {
  if (forms.empty()) return;
  if (forms.size() > 1) seconds_.add(forms[1]);
  std::uint32_t node = 0;
  for (const std::uint64_t form : forms) {
    if (used_ * 2 >= slots_.size()) grow();
    std::uint32_t next = step(node, form);
    if (next == 0) {
      next = static_cast<std::uint32_t>(nodes_.size());
      nodes_.emplace_back();
      insert({form, node, next});
    }
    node = next;
  }
  std::vector<std::uint32_t>& values = nodes_[node];
  if (std::find(values.begin(), values.end(), value) == values.end()) values.push_back(value);
}

const std::vector<std::uint32_t>* PhraseTrie::single(std::uint64_t form) const {
  if (slots_.empty()) return nullptr;
  const std::uint32_t node = step(0, form);
  return node == 0 || nodes_[node].empty() ? nullptr : &nodes_[node];
}

}  // namespace witnessmark

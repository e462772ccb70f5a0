#pragma once
#include <algorithm>
#include <atomic>
#include <cstddef>
#include <future>
#include <thread>
#include <vector>

namespace witnessmark {

/// Does work(0) to work(count - 1), each once, on as many threads as there are processors; in which order is not said.
/// Returns when all is done; the first exception of any is thrown again.
template <typename Work>
void in_parallel(std::size_t count, const Work& work) {
  const std::size_t threads = std::min<std::size_t>(count, std::max(1U, std::thread::hardware_concurrency()));
  std::atomic<std::size_t> next = 0;
  const auto do_some = [&] {
    for (std::size_t i = next++; i < count; i = next++) work(i);
  };
  std::vector<std::future<void>> others;
  for (std::size_t i = 1; i < threads; ++i) others.push_back(std::async(std::launch::async, do_some));
  if (threads > 0) do_some();
  for (std::future<void>& other : others) other.get();
}

}  // namespace witnessmark

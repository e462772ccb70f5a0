#pragma once
#include <functional>
#include <string>

#include "witnessmark/app/coding_desk.h"
#include "witnessmark/terminal/state.h"

namespace witnessmark {

/// A coder's sitting: events go in, what they ask for is done at the desk, and when an event has been handled
/// the state shows what is on the disk. Where the coder stands is kept after every event.
class Session {
 public:
  /// Starts a player with the recording at a time; false when it could not be started. Empty when none was
  /// named.
  using Player = std::function<bool(const std::string& recording, Millisecond at)>;

  /// The desk must outlive it. Stands where the coder stood last.
  Session(CodingDesk& desk, Size size, Player player = {});

  /// Called with what is to be seen while something that may take a second is worked out.
  void while_working(std::function<void(const State&)> show) { show_working_ = std::move(show); }

  void handle(const Event& event);
  void press(const Key& key) { handle(KeyPressed{key}); }

  const State& state() const { return state_; }
  bool finished() const { return state_.finished; }
  /// Whether suspending was asked for; asks once.
  bool take_suspend();

 private:
  void run(Update update);

  CodingDesk& desk_;
  Player player_;
  State state_;
  std::string kept_;
  bool suspend_ = false;
  std::function<void(const State&)> show_working_;
};

}  // namespace witnessmark

#pragma once
#include <string>
#include <string_view>
#include <tuple>

#include "store/record/tables.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/quote_checks.h"

// What coders write beside the claims, as records of the same kind as those of spreadsheets. Each event about
// one holds the whole record before and after, empty where it was not there.

namespace witnessmark {

template <typename V, Either<Note> R>
void fields(V& visit, R& r) {
  visit("id", r.id);
  visit("interview", r.interview);
  visit("claim", r.claim);
  visit("version", r.version);
  visit("first", r.range.begin);
  visit("past", r.range.end);
  visit("text", r.text);
  visit("author", r.author);
  visit("written", r.written);
}

template <typename V, Either<EntryLink> R>
void fields(V& visit, R& r) {
  visit("claim", r.claim);
  visit("entry", r.entry);
  visit("interview", r.interview);
  visit("verdict", r.verdict);
  visit("why", r.why);
  visit("author", r.author);
}

template <typename V, Either<QuoteCheck> R>
void fields(V& visit, R& r) {
  visit("claim", r.claim);
  visit("coder", r.coder);
  visit("interview", r.interview);
  visit("checked", r.checked);
  visit("result", r.result);
}

template <typename V, Either<PassagesRead> R>
void fields(V& visit, R& r) {
  visit("interview", r.interview);
  visit("coder", r.coder);
  visit("version", r.version);
  visit("ranges", r.ranges);
}

template <typename V, Either<ClaimOrigin> R>
void fields(V& visit, R& r) {
  visit("claim", r.claim);
  visit("relation", r.relation);
  visit("other", r.other);
  visit("interview", r.interview);
}

template <>
struct Table<Note> {
  static constexpr bool written_by_coders = true;
  static constexpr const char* name = "notes";
  static constexpr const char* kind = "note";
  static constexpr std::array key_columns{"id"};
  static std::tuple<Id> key(const Note& r) { return {r.id}; }
  static std::string target(const Note& r) { return to_string(r.id); }
  static std::string interview(const Note& r) { return r.interview; }
};

template <>
struct Table<EntryLink> {
  static constexpr bool written_by_coders = true;
  static constexpr const char* name = "entry_links";
  static constexpr const char* kind = "entry-link";
  static constexpr std::array key_columns{"claim", "entry"};
  static std::tuple<Id, std::string_view> key(const EntryLink& r) { return {r.claim, r.entry}; }
  static std::string target(const EntryLink& r) { return to_string(r.claim) + " " + r.entry; }
  static std::string interview(const EntryLink& r) { return r.interview; }
};

template <>
struct Table<QuoteCheck> {
  static constexpr bool written_by_coders = true;
  static constexpr const char* name = "quote_checks";
  static constexpr const char* kind = "quote-check";
  static constexpr std::array key_columns{"claim", "coder"};
  static std::tuple<Id, std::string_view> key(const QuoteCheck& r) { return {r.claim, r.coder}; }
  static std::string target(const QuoteCheck& r) { return to_string(r.claim) + " " + r.coder; }
  static std::string interview(const QuoteCheck& r) { return r.interview; }
};

template <>
struct Table<PassagesRead> {
  static constexpr bool written_by_coders = true;
  static constexpr const char* name = "passages_read";
  static constexpr const char* kind = "passages-read";
  static constexpr std::array key_columns{"interview", "coder", "version"};
  static std::tuple<std::string_view, std::string_view, int> key(const PassagesRead& r) {
    return {r.interview, r.coder, r.version};
  }
  static std::string target(const PassagesRead& r) {
    return r.interview + "/" + std::to_string(r.version) + " " + r.coder;
  }
  static std::string interview(const PassagesRead& r) { return r.interview; }
};

template <>
struct Table<ClaimOrigin> {
  static constexpr bool written_by_coders = true;
  static constexpr const char* name = "claim_origins";
  static constexpr const char* kind = "claim-origin";
  static constexpr std::array key_columns{"claim", "relation"};
  static std::tuple<Id, std::string_view> key(const ClaimOrigin& r) {
    return {r.claim, word_for(r.relation)};
  }
  static std::string target(const ClaimOrigin& r) {
    return to_string(r.claim) + " " + std::string(word_for(r.relation));
  }
  static std::string interview(const ClaimOrigin& r) { return r.interview; }
};

/// Calls with each kind of record that has a row of its own for each target, as a null pointer of its type.
template <typename Visit>
void for_each_coding_table(Visit visit) {
  visit(static_cast<Note*>(nullptr));
  visit(static_cast<EntryLink*>(nullptr));
  visit(static_cast<QuoteCheck*>(nullptr));
  visit(static_cast<PassagesRead*>(nullptr));
  visit(static_cast<ClaimOrigin*>(nullptr));
}

template <typename R>
R record_of(std::string_view json) {
  R record;
  read_record(nlohmann::json::parse(json), record);
  return record;
}

}  // namespace witnessmark

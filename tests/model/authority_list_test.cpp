#include "witnessmark/model/authority_list.h"

#include <doctest/doctest.h>

#include <string>

using namespace witnessmark;

namespace {

Term term(std::string key, std::string name, std::string broader = "", std::vector<std::string> spoken = {}) {
  Term made;
  made.key = std::move(key);
  made.name = std::move(name);
  made.broader = std::move(broader);
  made.spoken = std::move(spoken);
  return made;
}

AuthorityList mill() {
  Term rag = term("rag-loft", "Rag Loft", "attic", {"the loft"});
  rag.number = "A2-03";
  rag.former_names.push_back({"Drying Loft", {}});
  return AuthorityList(
      AuthorityList::Kind::places,
      {term("mill", "Mill"), term("attic", "Attic", "mill", {"the loft"}), rag,
       term("stray", "Stray Room", "no-such-place"), term("a", "A", "b"), term("b", "B", "a")});
}

std::string keys(const std::vector<const Term*>& terms) {
  std::string line;
  for (const Term* found : terms) line += (line.empty() ? "" : " ") + found->key;
  return line;
}

std::string keys(const std::vector<std::string>& list) {
  std::string line;
  for (const std::string& key : list) line += (line.empty() ? "" : " ") + key;
  return line;
}

}  // namespace

TEST_CASE("a term is found by every name it bears, whatever the case") {
  const AuthorityList list = mill();
  CHECK(keys(list.named("RAG LOFT")) == "rag-loft");
  CHECK(keys(list.named("drying loft")) == "rag-loft");
  CHECK(keys(list.named("a2-03")) == "rag-loft");
  CHECK(keys(list.named("the loft")) == "attic rag-loft");
  CHECK(keys(list.named("cellar")).empty());
}

TEST_CASE("the hierarchy is walked up and down, and a circle is cut") {
  const AuthorityList list = mill();
  CHECK(keys(list.above("rag-loft")) == "attic mill");
  CHECK(keys(list.above("stray")).empty());
  CHECK(keys(list.above("a")) == "b");
  CHECK(keys(list.all_within("mill")) == "mill attic rag-loft");
  CHECK(keys(list.all_within("attic")) == "attic rag-loft");
  CHECK(keys(list.all_within("none")).empty());
  CHECK(list.within("rag-loft", "mill"));
  CHECK(list.within("mill", "mill"));
  CHECK_FALSE(list.within("mill", "rag-loft"));
  CHECK_FALSE(list.within("none", "none"));
}

TEST_CASE("numbering schemes have the words of the CSV files") {
  for (const NumberScheme scheme :
       {NumberScheme::none, NumberScheme::since_1949, NumberScheme::before_1949, NumberScheme::local}) {
    CHECK(parse_number_scheme(to_string(scheme)) == scheme);
  }
  CHECK_FALSE(parse_number_scheme("roman").has_value());
}

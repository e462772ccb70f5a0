#include <doctest/doctest.h>

#include "witnessmark/terminal/state.h"
#include "witnessmark/terminal/view.h"

using namespace witnessmark;

namespace {

ClaimLine line_of(std::uint8_t number) {
  ClaimLine line;
  line.id.bytes[0] = number;
  line.interview = "lind-1";
  line.quotes = {{{10 * number}, {10 * number + 5}}};
  return line;
}

/// A list of three claims at the first.
State list_of_three() {
  State state;
  ClaimsPlace place;
  place.page = {0, 3, {line_of(1), line_of(2), line_of(3)}, ""};
  state.places.push_back(place);
  return state;
}

Update press(State state, const Key& key) {
  return update(std::move(state), KeyPressed{key});
}
Update press(State state, const char* key) {
  return press(std::move(state), *parse_key(key));
}

const Decide& decision(const Update& made) {
  REQUIRE(made.effects.size() == 1);
  REQUIRE(std::holds_alternative<Decide>(made.effects[0]));
  return std::get<Decide>(made.effects[0]);
}

}  // namespace

TEST_CASE("said so decides on the claim at the cursor and goes on to the next") {
  const Update made = press(list_of_three(), "s");
  CHECK(decision(made).claims == std::vector<Id>{line_of(1).id});
  CHECK(decision(made).status == ClaimStatus::said_so);
  CHECK(std::get<ClaimsPlace>(made.state.place()).at == 1);
}

TEST_CASE("undoing goes back to the claim it was about, so that the next key is for that one") {
  State state = press(list_of_three(), "s").state;
  state = update(std::move(state), Done{"undone", line_of(1).id, true}).state;
  CHECK(std::get<ClaimsPlace>(state.place()).at == 0);
  CHECK(decision(press(state, "s")).claims == std::vector<Id>{line_of(1).id});
  // From a claim shown in full.
  state = list_of_three();
  std::get<ClaimsPlace>(state.place()).at = 1;
  state.places.push_back(ClaimPlace{line_of(2).id});
  state = update(std::move(state), Done{"undone", line_of(1).id, true}).state;
  CHECK(std::get<ClaimPlace>(state.place()).id == line_of(1).id);
  CHECK(decision(press(state, "s")).claims == std::vector<Id>{line_of(1).id});
  // A decision itself moves nothing back.
  state = press(list_of_three(), "s").state;
  state = update(std::move(state), Done{"said so", line_of(1).id}).state;
  CHECK(std::get<ClaimsPlace>(state.place()).at == 1);
}

TEST_CASE("among undecided claims the next one takes the place of the one decided on") {
  State state = list_of_three();
  std::get<ClaimsPlace>(state.place()).query.status = ClaimStatus::proposed;
  CHECK(std::get<ClaimsPlace>(press(state, "s").state.place()).at == 0);
}

TEST_CASE("misread needs a reason, and Escape leaves everything as it was") {
  State state = press(list_of_three(), "m").state;
  REQUIRE(state.prompt);
  CHECK(press(state, "Escape").effects.empty());
  CHECK_FALSE(press(state, "Escape").state.prompt);
  // Without it the question stays, and says what is missing until something is typed.
  Update refused = press(state, "Enter");
  CHECK(refused.effects.empty());
  CHECK(refused.state.prompt);
  CHECK(refused.state.message.find("a misreading needs its reason") == 0);
  CHECK(press(std::move(refused.state), "n").state.message.empty());
  for (const char* key : {"n", "o"}) state = press(std::move(state), key).state;
  const Update made = press(state, "Enter");
  CHECK(decision(made).why == "no");
  CHECK(decision(made).status == ClaimStatus::misread);
}

TEST_CASE("what was wrong with a date is not said of the next one") {
  State state = list_of_three();
  FormPlace form;
  form.at = 3;
  state.places.push_back(form);
  state = press(std::move(state), "Enter").state;
  REQUIRE((state.prompt && state.prompt->reads_date));
  state = press(std::move(state), "x").state;
  state = update(std::move(state), DateRead{"x", {}, "no date: write one date"}).state;
  state = press(std::move(state), "Enter").state;
  CHECK(state.message.find("not taken") == 0);
  state = press(std::move(state), "Backspace").state;
  CHECK(state.message.empty());
}

TEST_CASE("the last decision is made again with its reason") {
  State state = press(list_of_three(), "x").state;
  state = press(std::move(state), "d").state;
  state = press(std::move(state), "Enter").state;
  const Update made = press(state, ".");
  CHECK(decision(made).claims == std::vector<Id>{line_of(2).id});
  CHECK(decision(made).status == ClaimStatus::set_aside);
  CHECK(decision(made).why == "d");
}

TEST_CASE("deciding on all says how many, and nothing is done on another letter") {
  State state = press(list_of_three(), "A").state;
  REQUIRE(state.prompt);
  CHECK(state.prompt->label.find("All 3 undecided of 3") == 0);
  CHECK(press(press(state, "y").state, "Enter").effects.empty());
  CHECK(decision(press(press(state, "s").state, "Enter")).claims.size() == 3);
}

TEST_CASE("a claim that lacks its number is opened where that is asked for") {
  State state = list_of_three();
  const std::string_view needs = "a count needs its number";
  std::get<ClaimsPlace>(state.place()).page.lines[0].needs = needs;
  CHECK(decision(press(press(state, "x").state, "Enter")).status == ClaimStatus::set_aside);
  Update made = press(std::move(state), "s");
  REQUIRE(made.effects.size() == 1);
  CHECK(std::holds_alternative<LoadClaim>(made.effects[0]));
  CHECK(made.state.message.find(needs) == 0);
  auto page = std::make_shared<ClaimPageFull>();
  page->line = line_of(1);
  page->record.claim.statement = Statement::count;
  page->record.subject_name = "Spare lamp";
  made = update(std::move(made.state), ClaimLoaded{page});
  REQUIRE(std::holds_alternative<FormPlace>(made.state.place()));
  CHECK(made.state.message.find(needs) == 0);
  made = press(std::move(made.state), "s");
  CHECK(made.effects.empty());
  made = press(std::move(made.state), "Enter");
  REQUIRE(made.state.prompt);
  CHECK(made.state.prompt->label == "Number:");
  made = press(press(std::move(made.state), "4").state, "Enter");
  made = press(std::move(made.state), "s");
  REQUIRE(made.effects.size() == 1);
  CHECK(std::get<Correct>(made.effects[0]).claim.quantity == Quantity{4, 4, "4"});
}

namespace {

/// The form that corrects a claim at the quay, opened from the list.
State form_at_quay(ClaimStatus status = ClaimStatus::proposed) {
  auto page = std::make_shared<ClaimPageFull>();
  page->line = line_of(1);
  Claim& claim = page->record.claim;
  claim.id = page->line.id;
  claim.status = status;
  claim.statement = Statement::ends;
  claim.place = "quay";
  claim.place_words = "the old wharf";
  claim.place_carried = true;
  page->record.place_name = "Quay";
  Update made = press(list_of_three(), "e");
  made = update(std::move(made.state), ClaimLoaded{page});
  REQUIRE(std::holds_alternative<FormPlace>(made.state.place()));
  return std::move(made.state);
}

/// Types a place, and takes what the list has for it.
State give_place(State state, const char* typed, std::vector<TermMatch> matches) {
  auto& form = std::get<FormPlace>(state.place());
  form.at = 2;
  state = press(std::move(state), "Enter").state;
  REQUIRE(state.prompt);
  CHECK(state.prompt->label == "Place:");
  state.prompt->text = typed;
  state = update(std::move(state), TermsFound{typed, std::move(matches)}).state;
  return press(std::move(state), "Enter").state;
}

}  // namespace

TEST_CASE("of names that are offered before anything is typed none is chosen until one is moved to") {
  const std::vector<TermMatch> offered{{"bow", "Bow", ""}, {"loft", "Drying loft", ""}};
  State state = form_at_quay();
  std::get<FormPlace>(state.place()).at = 2;
  state = press(std::move(state), "Enter").state;
  state = update(std::move(state), TermsFound{"", offered}).state;
  const auto shown = view(state).input;
  REQUIRE(shown);
  CHECK_FALSE(shown->focus);
  CHECK(as_text(shown->below.at(0).spans).find("now Quay; Enter alone keeps it") != std::string::npos);
  CHECK(std::get<FormPlace>(press(state, "Enter").state.place()).draft.place == "quay");
  state = press(std::move(state), "Down").state;
  CHECK(view(state).input->focus == 0);
  CHECK(std::get<FormPlace>(press(state, "Enter").state.place()).draft.place == "bow");
  state = press(std::move(state), "Down").state;
  CHECK(std::get<FormPlace>(press(state, "Enter").state.place()).draft.place == "loft");
}

TEST_CASE("of a place that was filled in and taken back nothing is saved") {
  State state = give_place(form_at_quay(), "xyz", {});
  CHECK(std::get<FormPlace>(state.place()).draft.place.empty());
  CHECK(std::get<FormPlace>(state.place()).draft.place_words == "xyz");
  CHECK(unsaved_form(state) != nullptr);
  state = give_place(std::move(state), "quay", {{"quay", "Quay", ""}});
  CHECK(std::get<FormPlace>(state.place()).draft == std::get<FormPlace>(state.place()).original);
  CHECK(unsaved_form(state) == nullptr);
  CHECK(decision(press(std::move(state), "s")).status == ClaimStatus::said_so);
  // Another place of the list brings its own words, not those of what was typed before.
  state = give_place(form_at_quay(), "xyz", {});
  state = give_place(std::move(state), "loft", {{"drying-loft", "Drying loft", ""}});
  const Update made = press(std::move(state), "s");
  REQUIRE(!made.effects.empty());
  const Claim& saved = std::get<Correct>(made.effects[0]).claim;
  CHECK(saved.place == "drying-loft");
  CHECK(saved.place_words == "Drying loft");
  CHECK_FALSE(saved.place_carried);
}

TEST_CASE("a form saved without a change is no correction") {
  CHECK(decision(press(form_at_quay(), "s")).status == ClaimStatus::said_so);
  // There and back again is no change either.
  State state = press(press(press(form_at_quay(), "Home").state, "Right").state, "Left").state;
  CHECK(decision(press(std::move(state), "s")).status == ClaimStatus::said_so);
  const Update made = press(form_at_quay(ClaimStatus::said_so), "s");
  for (const Effect& effect : made.effects) {
    CHECK_FALSE(std::holds_alternative<Correct>(effect));
    CHECK_FALSE(std::holds_alternative<Decide>(effect));
  }
  CHECK(made.state.message.find("nothing was changed") == 0);
}

TEST_CASE("a file that is only read takes no decision") {
  State state = list_of_three();
  state.can_edit = false;
  state.why_reading = "somebody else is editing";
  for (const char* key : {"s", "m", "x", "e", ".", "n", "k", "d", "j", "A", "u", "U"}) {
    CAPTURE(key);
    const Update made = press(state, key);
    CHECK(made.effects.empty());
    CHECK_FALSE(made.state.prompt);
    CHECK(made.state.message == state.why_reading);
  }
}

TEST_CASE("typing goes by characters, not by bytes") {
  State state = press(list_of_three(), "/").state;
  for (const char* typed : {"e\u0301", "\u706F", "a"})
    state = press(std::move(state), Key{Key::Name::text, typed}).state;
  state = press(std::move(state), "Left").state;
  state = press(std::move(state), "Backspace").state;
  CHECK(state.prompt->text ==
        "e\u0301"
        "a");
  state = press(std::move(state), "Home").state;
  state = press(std::move(state), "Delete").state;
  CHECK(state.prompt->text == "a");
}

TEST_CASE("where one stood is found again") {
  State state = list_of_three();
  auto& place = std::get<ClaimsPlace>(state.place());
  place.at = 2;
  ClaimQuery query = {
      "lind-1", "Anna\tLind", "crane", "deck", Statement::ends, ClaimStatus::proposed, Outcome::conflicts,
      30};
  place.query = query;
  state.places.push_back(ClaimPlace{line_of(3).id});
  state.places.push_back(ReportPlace{ReportKind::said_about, "crane", nullptr, 4});
  const Update again = begin(State{}, standing_text(state));
  REQUIRE(again.state.places.size() == 4);
  query.speaker = "Anna Lind";
  CHECK(std::get<ClaimsPlace>(again.state.places[1]).query == query);
  CHECK(std::get<ClaimsPlace>(again.state.places[1]).at == 2);
  CHECK(std::get<ClaimPlace>(again.state.places[2]).id == line_of(3).id);
  CHECK(std::get<ReportPlace>(again.state.places[3]).at == 4);
  CHECK(standing_text(again.state) == standing_text(begin(State{}, standing_text(again.state)).state));
  for (const char* broken :
       {"", "claims", "claims\tx", "claim\tzz", "report\t1\t99\t", "\t\n\t\t", "interviews\t-5"})
    CHECK(begin(State{}, broken).state.places.size() == 1);
}

TEST_CASE("key names are read as they are written") {
  for (const char* name : {"s", "S", "Space", "Enter", "Escape", "Tab", "BackTab", "Up", "PageDown", "Ctrl-r",
                           "Delete", "?", "."}) {
    REQUIRE(parse_key(name));
    CHECK(to_string(*parse_key(name)) == name);
  }
  for (const char* none : {"", "Return now", "Ctrl-", "ab"}) CHECK_FALSE(parse_key(none));
}

namespace {

/// A form with a change, over the list.
State form_over_list() {
  State state = list_of_three();
  FormPlace form;
  form.draft.statement = Statement::ends;
  form.subject_name = "Crane";
  form.changed = true;
  state.places.push_back(form);
  return state;
}

}  // namespace

TEST_CASE("what is not saved is said on every screen, and nothing drops it unasked") {
  State state = form_over_list();
  CHECK(view(state).message.find("Not saved yet") == 0);
  state = press(std::move(state), "?").state;
  CHECK(view(state).message.find("Not saved yet") == 0);
  for (const char* key : {"q", "1"}) {
    CAPTURE(key);
    Update made = press(state, key);
    CHECK_FALSE(made.state.finished);
    CHECK(unsaved_form(made.state) != nullptr);
    made = press(std::move(made.state), key);
    CHECK((made.state.finished || unsaved_form(made.state) == nullptr));
  }
  // On the form itself, too; and what was asked is forgotten when work goes on.
  state = form_over_list();
  state = press(std::move(state), "q").state;
  CHECK_FALSE(state.finished);
  state = press(std::move(state), "Down").state;
  CHECK_FALSE(press(state, "q").state.finished);
  CHECK(press(press(state, "q").state, "q").state.finished);
  // A query is nothing to save.
  state = list_of_three();
  state = press(std::move(state), "f").state;
  state = press(std::move(state), "Right").state;
  CHECK(view(state).message == "All is saved.");
  CHECK(press(state, "q").state.finished);
}

TEST_CASE("a correction and a new claim are named when they are saved") {
  State state = form_over_list();
  state.places.push_back(std::get<FormPlace>(state.place()));
  std::get<FormPlace>(state.place()).draft.quantity = Quantity{10, 14, "a dozen"};
  Update made = press(state, "s");
  REQUIRE(!made.effects.empty());
  CHECK(std::get<Correct>(made.effects[0]).what == "ends · Crane · 10 to 14");
  std::get<FormPlace>(state.place()).purpose = FormPlace::Purpose::add;
  made = press(state, "s");
  REQUIRE(!made.effects.empty());
  CHECK(std::get<Add>(made.effects[0]).what == "ends · Crane · 10 to 14");
}

TEST_CASE("lists show the narrator's words where there is room") {
  State state = list_of_three();
  std::get<ClaimsPlace>(state.place()).page.lines[1].words = "We had the crane";
  state.size = {80, 24};
  CHECK(as_text(render(view(state), state.size)).find("“We had the crane”") != std::string::npos);
  state.size = {40, 10};
  CHECK(as_text(render(view(state), state.size)).find("We had") == std::string::npos);
}

TEST_CASE("Ctrl-C drops no form that is not saved unasked, not even while a field is being typed") {
  State state = form_over_list();
  Update made = press(state, "Ctrl-c");
  CHECK_FALSE(made.state.finished);
  CHECK(unsaved_form(made.state) != nullptr);
  CHECK(press(made.state, "Ctrl-c").state.finished);
  state.prompt = Prompt{};
  made = press(state, "Ctrl-c");
  CHECK_FALSE(made.state.finished);
  CHECK(press(made.state, "Ctrl-c").state.finished);
  made = press(made.state, "x");  // typing on
  CHECK_FALSE(press(made.state, "Ctrl-c").state.finished);
  CHECK(press(list_of_three(), "Ctrl-c").state.finished);
}

TEST_CASE("what a key cannot do is told from what it did") {
  State state = press(list_of_three(), "b").state;
  CHECK(state.refused);
  state = press(std::move(state), "Down").state;
  CHECK_FALSE(state.refused);
  state.can_edit = false;
  state = press(std::move(state), "s").state;
  CHECK(state.refused);
  state = update(list_of_three(), Failed{{"", 0, 0, "the disk is full", ""}}).state;
  CHECK(state.refused);
}

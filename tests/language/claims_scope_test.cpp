// One construction at a time: what denies, hedges or attributes what, what is led, replaced, moved or
// counted. The words of the lists are of another kind of site than those of tables/claims.tsv.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

const ClaimTable& lists() {
  static const ClaimTable table =
      lists_of({"kiln", "pump", "tram", "signal lamp", "weighbridge", "cage", "compressor", "forge"},
               {"lower level", "lamp room", "head house", "adit", "Coldwick"});
  return table;
}

std::string read(const std::string& text) {
  return claims_line(text, lists());
}

using Row = ShortRow;

template <std::size_t N>
void check(const Row (&rows)[N]) {
  check_rows(rows, lists());
}

}  // namespace

TEST_CASE("a negative reaches as far as its clause, and no further than a but") {
  const Row rows[] = {
      // NegEx and ConText (Chapman et al. 2001; Harkema et al. 2009): pseudo-negations first, then scope,
      // then terminators.
      {"They didn't take out the pump in 1931.", "ends pump 1931 denied"},
      {"There was no pump in the adit.", "absent pump@adit"},
      {"The pump wer'nt in the adit.", "absent pump@adit"},
      {"There was never a pump in the adit.", "absent pump@adit"},
      {"There was nothing in the adit but a pump.", "present pump@adit"},
      {"The pump wasn't in the adit, the forge was in the adit.", "absent pump@adit; present forge@adit"},
      {"No doubt the pump was in the adit.", "present pump@adit"},
      {"It wasn't until 1931 that they fitted the pump.", "begins pump 1931"},
      {"They fitted the pump not only in 1931 but in 1933.", "begins pump 1931; begins pump 1933"},
      {"I don't think they fitted the pump in 1931.", "begins pump 1931 hedged denied"},
      {"Neither the pump nor the forge was in the adit.", "absent pump@adit; absent forge@adit"},
      {"They took out everything except the forge.", "ends forge denied"},
      {"It was in the adit, wasn't it, the pump.", "present pump@adit"},
      {"They say the pump was taken out in 1931, but it wasn't.", "ends pump 1931 told denied"},
      {"The pump was no longer in the adit.", "absent pump@adit"},
  };
  check(rows);
}

TEST_CASE("a hedge weakens the clause it stands in") {
  const Row rows[] = {
      {"I think the forge was in the adit.", "present forge@adit hedged"},
      {"Perhaps the forge was in the adit.", "present forge@adit guess"},
      {"The forge might have been in the adit.", "present forge@adit guess"},
      {"They put in the forge about 1931.", "begins forge 1931~"},
      {"They put in the forge, I believe, in 1931.", "begins forge 1931 hedged"},
      {"I think he was a good man, and the forge was in the adit.", "present forge@adit"},
      {"I couldn't swear to it, but the forge was in the adit.", "present forge@adit guess"},
      {"I don't know if there was a forge in the adit.", ""},
      {"I don't remember a forge in the adit.", ""},
      {"I forget the year, but there was a forge in the adit.", "present forge@adit"},
      {"They put in the forge in 1931, or was it 1932?", "begins forge [1931,1932] guess"},
      // Behind the statement a hedge stands alone, or it is of something else.
      {"The forge was in the adit, as far as I know.", "present forge@adit hedged"},
      {"They put in the forge in 1931, I think it was.", "begins forge 1931 hedged"},
      {"The forge was in the adit, and I think it was the foreman who wanted it there.",
       "present forge@adit"},
      // A number out of two, or with a tail, is not exact.
      {"There were six, seven trams in the adit.", "count tram@adit n=6..7 hedged"},
      {"There were twenty-some trams in the adit.", "count tram@adit n=18..22 hedged"},
      {"There were four trams in the adit, two of them new.", "count tram@adit n=4"},
      {"I suppose the forge was in the adit.", "present forge@adit hedged"},
      {"There was, I don't know, a forge in the adit.", "present forge@adit hedged"},
  };
  check(rows);
}

TEST_CASE("what others said, wrote or left to be inferred is told, read or inferred") {
  const Row rows[] = {
      {"My uncle told me they took out the tram in 1931.", "ends tram 1931 told"},
      {"According to the foreman the tram was taken out in 1931.", "ends tram 1931 told"},
      {"I read that they took out the tram in 1931.", "ends tram 1931 read"},
      {"It says in the book that the tram was taken out in 1931.", "ends tram 1931 read"},
      {"They must have taken out the tram in 1931.", "ends tram 1931 inferred"},
      {"I saw the tram in the adit.", "present tram@adit first-hand"},
      {"We were three weeks without a pump.", "absent pump first-hand"},
      {"We took out the tram in 1931.", "ends tram 1931 first-hand"},
      {"The foreman told us, and I saw it myself, that the tram was in the adit.",
       "present tram@adit first-hand"},
      // Words of hearsay lead in what is said, or stand alone behind it.
      {"They tell me the tram was taken out in 1931.", "ends tram 1931 told"},
      {"I'm told the tram was taken out in 1931.", "ends tram 1931 told"},
      {"The tram was taken out in 1931, so they told me.", "ends tram 1931 told"},
      {"The tram was taken out in 1931, or so somebody said.", "ends tram 1931 told hedged"},
      {"The tram was taken out in 1931, is what I was told.", "ends tram 1931 told"},
      {"It was the foreman who told me the tram was taken out in 1931.", "ends tram 1931 told"},
      {"They took out the tram in 1931, and the foreman never said a word.", "ends tram 1931"},
      {"They took out the tram in 1931 and the foreman said, carry on, lads.", "ends tram 1931"},
      {"There was a pump in the adit that told you the level.", "present pump@adit"},
      {"They took out the tram in 1931, and I'd told them.", "ends tram 1931"},
      {"I heard the tram was taken out in 1931.", "ends tram 1931 told"},
      {"They took out the tram in 1931, I heard.", "ends tram 1931 told"},
      {"I heard the pump in the adit.", "present pump@adit first-hand"},
      {"I'd always heard it said that the pump was in the adit.", "present pump@adit told"},
      // What is written, and where.
      {"The plate said the pump was in the adit.", "present pump@adit read"},
      {"The pump was in the adit, it was in the paper.", "present pump@adit read"},
      {"They took out the tram in 1931, there was a plate.", "ends tram 1931 read"},
      {"They took out the tram in 1931, there was a plate missing on it.", "ends tram 1931"},
      // What is reckoned from something else.
      {"They'll have taken out the tram.", "ends tram inferred"},
      {"The pump was put in after the forge, so it'd be 1931.", "begins pump 1931 inferred"},
      {"They put in the pump, it'd be in 1931.", "begins pump 1931"},
      {"The foreman told us to take out the tram.", ""},
      {"They were going to take out the tram.", ""},
      {"I wish they had kept the tram.", ""},
      {"I'd have put the tram in the adit.", ""},
  };
  check(rows);
  const auto claims = claims_of("My uncle told me they took out the tram in 1931.", lists());
  REQUIRE(claims.size() == 1);
  CHECK(claims[0].knower == "My uncle");
  CHECK(claims_of("According to the foreman, the tram was taken out in 1931.", lists())[0].knower ==
        "the foreman");
}

TEST_CASE("what is seen in a picture or put in a book that was just spoken of is read") {
  const Row rows[] = {
      {"I have a photograph here. You can see the pump in the adit.", "present pump@adit read"},
      {"She's in the photograph there, and you can see the pump in the adit.", "present pump@adit read"},
      {"You can see the pump in the adit.", "present pump@adit"},
      {"I've his diary. And he's put, the tram was taken out in 1931.", "ends tram 1931 read"},
      {"I knew him. And he's put, the tram was taken out in 1931.", "ends tram 1931"},
      {"Q: What does it say in his notebook? | A: He says the tram was taken out in 1931.",
       "ends tram 1931 read"},
      {"I have a photograph here. It was a fine day. We had tea. It was cold. Nobody came. We went home. You "
       "can see "
       "the pump in the adit.",
       "present pump@adit"},
  };
  check(rows);
}

TEST_CASE("who stands in the words of a statement knows it at first hand") {
  const Row rows[] = {
      {"We were three weeks without a pump.", "absent pump first-hand"},
      {"The pump stood by us in the adit.", "present pump@adit first-hand"},
      {"The pump was in the adit when I came.", "present pump@adit first-hand"},
      {"The pump was in the adit before us.", "present pump@adit"},
      {"They took our pump out in 1931.", "ends pump 1931 first-hand"},
      {"My uncle put the pump in the adit.", "begins pump@adit"},
      {"I think the pump was in the adit.", "present pump@adit hedged"},
      {"I know that, the pump was in the adit.", "present pump@adit"},
      // In another clause of the sentence it is another statement that he vouches for.
      {"The pump was in the adit, and for the rest of that day we said not one more word about it to the "
       "foreman.",
       "present pump@adit"},
      // Anybody who was there, and so the narrator.
      {"You could hear the pump in the adit.", "present pump@adit first-hand"},
      {"You'd a pump in the adit.", "present pump@adit first-hand"},
      {"In July you'd sit by the kiln.", "present kiln first-hand"},
      {"You can see the pump in the adit.", "present pump@adit"},
      {"The pump was in the adit, you know.", "present pump@adit"},
  };
  check(rows);
}

TEST_CASE("an answer that only agrees is led") {
  const Row rows[] = {
      {"Q: The kiln was taken down in 1931, wasn't it? | A: Yes.", "ends kiln 1931 led"},
      {"Q: So the kiln was taken down in 1931? | A: I suppose so.", "ends kiln 1931 hedged led"},
      {"Q: Was the kiln taken down in 1931? | A: No, 1932.", "ends kiln 1931 denied; ends kiln 1932"},
      {"Q: Was the kiln taken down in 1931? | A: I wouldn't know.", ""},
      {"Q: When was the kiln taken down? | A: In 1931.", "ends kiln 1931"},
      {"Q: Where was the pump? | A: In the adit.", "present pump@adit"},
      {"Q: How many pumps were there in the adit? | A: Four.", "count pump@adit n=4"},
      {"Q: What was there in the adit? | A: A pump. The old forge.", "present pump@adit; present forge@adit"},
      {"Q: The kiln was taken down in 1931? | A: Yes, they took down the kiln in 1931.", "ends kiln 1931"},
      {"Q: The kiln was taken down in 1931? | A: We'd a dog then.", ""},
  };
  check(rows);
  const auto claims = claims_of("Q: The kiln was taken down in 1931, wasn't it? | A: Yes.", lists());
  REQUIRE(claims.size() == 1);
  // The narrator's words first, then the question that supplied the fact.
  REQUIRE(claims[0].quotes.size() == 2);
  CHECK(claims[0].quotes[0].begin > claims[0].quotes[1].begin);
  CHECK(claims[0].subject_carried);
}

TEST_CASE("a replacement ends one thing and begins another") {
  const Row rows[] = {
      {"They replaced the pump with a compressor in 1931.", "ends pump 1931; begins compressor 1931"},
      {"The pump was replaced by a compressor in 1931.", "ends pump 1931; begins compressor 1931"},
      {"They took out the pump and put a compressor in its place in 1931.",
       "ends pump 1931; begins compressor 1931"},
      {"We swapped the pump for a compressor in 1931.",
       "ends pump 1931 first-hand; begins compressor 1931 first-hand"},
      {"A compressor took over from the pump in 1931.", "begins compressor 1931; ends pump 1931"},
      {"They never replaced the pump.", "ends pump denied"},
  };
  check(rows);
}

TEST_CASE("a move ends a thing at one place and begins it at another") {
  const Row rows[] = {
      {"They moved the pump from the adit to the head house in 1931.",
       "ends pump@adit 1931; begins pump@head house 1931"},
      {"In 1931 they moved the pump to the head house.", "ends pump 1931; begins pump@head house 1931"},
      {"They took the pump out of the adit in 1931.", "ends pump@adit 1931"},
      {"The pump came into the adit in 1931.", "begins pump@adit 1931"},
      {"They never moved the pump.", "ends pump denied"},
      {"I was moved to the head house in 1931.", "located @head house 1931 first-hand"},
  };
  check(rows);
}

TEST_CASE("numbers count things, and not years, feet or people") {
  const Row rows[] = {
      {"There were three pumps in the adit.", "count pump@adit n=3"},
      {"We had a pair of pumps in 1931.", "count pump 1931 n=2 first-hand"},
      {"There were three or four pumps in the adit.", "count pump@adit n=3..4 hedged"},
      {"Both pumps were in the adit.", "count pump@adit n=2"},
      {"There was only one pump in the adit.", "count pump@adit n=1"},
      {"There was a pump in the adit.", "present pump@adit"},
      {"There weren't three pumps in the adit, there were two.",
       "count pump@adit n=3 denied; count pump@adit n=2"},
      {"There were forty of us in the adit.", ""},
      {"Two of the four pumps were taken out in 1931.", "ends pump 1931 n=2"},
  };
  check(rows);
}

TEST_CASE("words of time carry a state over") {
  const Row rows[] = {
      {"There used to be a kiln in the head house.", "present kiln@head house"},
      {"The kiln stood in the head house until 1931.", "ends kiln@head house 1931"},
      {"The kiln was still in the head house in 1931.", "present kiln@head house 1931"},
      {"The kiln was gone by 1931.", "ends kiln [..1931]"},
      {"They hadn't yet fitted the kiln in 1931.", "absent kiln 1931"},
      {"The pump was in the adit by 1931.", "present pump@adit 1931"},
  };
  check(rows);
}

TEST_CASE("what is taken back in the same breath is withdrawn") {
  const Row rows[] = {
      {"The pump was in the adit, sorry, the lamp room.", "present pump@lamp room"},
      {"It was the kiln, I mean the forge, that went in 1931.", "ends forge 1931"},
  };
  check(rows);
}

TEST_CASE("colours, parts and kinds are attributes, painting is a beginning") {
  const Row rows[] = {
      {"The cage was dark green in 1931.", "attribute cage 1931 {colour: dark green}"},
      {"The cage wasn't green, it was red.",
       "attribute cage {colour: green} denied; attribute cage {colour: red}"},
      {"We painted the cage red in 1931.", "begins cage 1931 {colour: red} first-hand"},
      {"They called the weighbridge the Judge.", "attribute weighbridge {name: the Judge}"},
      {"The lamp room was cream in 1931.", "attribute @lamp room 1931 {colour: cream}"},
      {"The weighbridge had a brass plate.", "attribute weighbridge {with: a brass plate}"},
  };
  check(rows);
}

TEST_CASE("events and whereabouts") {
  const Row rows[] = {
      {"The lower level flooded in 1931.", "happened @lower level 1931 {flooded}"},
      {"There was a fire in the lamp room in 1931.", "happened @lamp room 1931 {fire}"},
      {"We were in Coldwick in 1931.", "located @Coldwick 1931 first-hand"},
      {"I was in the lamp room in 1931.", "located @lamp room 1931 first-hand"},
  };
  check(rows);
}

TEST_CASE("it and there stand for what was last spoken of, and the claim says so") {
  const auto claims = claims_of("The compressor stood in the adit. They took it out in 1931.", lists());
  REQUIRE(claims.size() == 2);
  CHECK(dump(claims[1]) == "ends compressor@adit 1931 unstated firm affirmed");
  CHECK(claims[1].subject_carried);
  CHECK(claims[1].place_carried);
  CHECK_FALSE(claims[0].subject_carried);
  // A thing in the plural is no "it".
  CHECK(read("The pumps were in the adit. It was taken out in 1931.") == "present pump@adit");
}

TEST_CASE("what we had before the narrator's time is not known at first hand") {
  const Row rows[] = {
      {"Before my time we had a kiln in the adit.", "present kiln@adit"},
      {"Before I was born we fitted a pump.", "begins pump"},
      {"We had a kiln in the adit, before my time.", "present kiln@adit"},
      {"We took out the tram before I came.", "ends tram"},
      {"Our kiln was in the adit before I joined.", "present kiln@adit"},
      {"You could hear the pump before I was born.", "present pump"},
      {"We were in Coldwick before my time.", "located @Coldwick"},
      {"It was before my time, but we had a kiln in the adit.", "present kiln@adit"},
      {"My uncle told me we took out the tram before I was born.", "ends tram told"},
      // "I" is nobody else; what is seen is seen.
      {"Before I came we had a kiln in the adit, and I fitted the pump.",
       "present kiln@adit; begins pump first-hand"},
      {"I painted the cage red before I joined the others.", "begins cage {colour: red} first-hand"},
      {"I saw the tram in the adit after my time.", "present tram@adit first-hand"},
      // A child was there.
      {"I was only little, but we had a kiln in the adit.", "present kiln@adit first-hand"},
  };
  check(rows);
}

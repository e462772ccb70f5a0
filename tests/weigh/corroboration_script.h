#pragma once
#include <string>

namespace witnessmark {

/// A small site written in lines, and one question asked of it; everything is about one lamp on one roof.
///
///   source KEY KIND
///   derives SOURCE FROM [WORDS]
///   interview KEY NARRATOR[,NARRATOR] [shown=KEY]
///   entry KEY SOURCE STATEMENT DATE [intended] [probable] [possible] [hidden] [throughout] [date=KEY]
///   [caption=KEY] [n=K] told INTERVIEW NARRATOR STATEMENT DATE [denied] [told=WHO] [read] [inferred] [guess]
///   [led] [away] [n=K] stay KEY SOURCE LOCATION DATE at INTERVIEW NARRATOR LOCATION DATE ask STATEMENT DATE
///   [denied] [n=K]      ask at LOCATION DATE
///
/// Gives "GRADE (TALLY): VOICE+VOICE | VOICE / VOICE", groups parted by |, those against after /, divided
/// ones in brackets.
std::string ask(const std::string& script);

/// The links between the voices of the answer, one after the other.
std::string links(const std::string& script);

}  // namespace witnessmark

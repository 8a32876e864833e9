"""The first word of a headline answers the question as it was put; the verdict says whether things are all right."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.wording.opening import opened


@pytest.mark.parametrize(
    ("text", "topic", "verdict", "opens"),
    [
        ("Is a 700 CCA AGM enough for a Pike?", "run-check", "yes", "Yes: your 700"),
        ("Is a 700 CCA AGM too weak for a Pike?", "run-check", "yes", "No: your 700"),
        ("Is 16 mm2 too thin for 280 A over 7 m?", "cable-size", "no", "Yes: 16"),
        ("Is 16 mm2 big enough for 280 A over 7 m?", "cable-size", "no", "No: 16"),
        ("220 A in 50 mm2 and a 400 A fuse on it. Is the fuse too big?", "fuse-size", "no", "Yes: a 400"),
        ("220 A in 50 mm2 and a 400 A fuse on it, is the fuse right?", "fuse-size", "no", "No: a 400"),
        ("12 V 80 Ah AGM 600 CCA for a Minnow, fine or not?", "run-check", "yes", "Yes: your 600"),
        ("A Minnow and a 600 CCA AGM. Fine or not?", "run-check", "yes", "Yes: your 600"),
        ("My gel sits at 12.1 after a night, am I in trouble?", "rest-voltage", "no", "Yes: 12.1"),
        ("Is 25.1 too low on a 24 V flooded bank?", "rest-voltage", "yes", "No: 25.1"),
        ("Just put the meter on it, 12.4, an AGM. Leave it or plug in?", "rest-voltage", "marginal", "Plug in soon: "),
        ("12.6 at rest, 10.6 at the battery with the thruster on and 8.4 at the thruster. Which bit is rubbish?",
         "load-voltage", "no", "The cable or its joints: 2.2"),
        ("Lithium reading 13.1, that's full right?", "rest-voltage", "yes", "No: 13.1"),
        ("AGM at 12.9 this morning, is that full?", "rest-voltage", "yes", "Yes: 12.9"),
        ("AGM shows 11.8 every morning. Is it finished?", "rest-voltage", "no", "Not by this reading: 11.8"),
        ("800 CCA, charged, 12.7 V, 400 A for 15 s and it fell to 9.1 at 21 C. Bin it?", "replacement", "no", "Yes:"),
        ("800 CCA, charged, 12.7 V, 400 A for 15 s and it fell to 9.1 at 21 C. Bin it?", "load-voltage", "no", "9.1"),
        ("Can I keep 8 year old AGMs another season?", "replacement", "no", "Not for much longer"),
        ("Is 1000 MCA the same as 1000 CCA?", "rating-convert", "information", "No: 1000"),
        ("Two wet 110 Ah under the bunk on a charger, do I need holes and how big?", "ventilation", "information",
         "Yes: the space"),
        # what happened is told, what may happen is asked
        ("In the lock the BMS shut down. It is a 100 Ah lithium of 100 A, the thruster takes 190 A.", "run-check", "no",
         "No: your 100"),
        ("Will the BMS shut down? 100 Ah lithium, 100 A at most, 190 A thruster", "run-check", "no", "Yes: your 100"),
        # the other side of the question is only its contrary
        ("Does a 50 W panel cover 0.1 A of drain or shall we find it flat?", "solar", "yes", "Yes: a 50"),
        ("Is 12.7 V all right for an AGM or do I have to worry?", "rest-voltage", "yes", "Yes: 12.7"),
        ("Is the 12.1 V of the AGM too low or will I be stuck?", "rest-voltage", "no", "Yes: 12.1"),
        ("Wet 700 CCA, 12 V 250 A thruster: can it turn that or are we dreaming?", "run-check", "yes", "Yes: your 700"),
        ("Is the AGM full or is it flat at 12.7 V?", "rest-voltage", "yes", "About 85"),
        # is there a danger in it, is anything wrong with it
        ("Is there any risk in feeding the 12 V lights from the lower battery of my 24 V bank?", "bank-wiring", "no",
         "Yes: taking"),
        ("Any danger in a 300 A fuse on 4 AWG for the Minnow?", "fuse-size", "no", "Yes: a 300"),
        ("Is there a downside to a 600 CCA AGM for the Minnow?", "run-check", "yes", "No: your 600"),
        ("Would it be a bad idea to charge my gel on the wet setting?", "charger-setting", "no", "Yes: the wet"),
        ("Is there a way to fit a 300 A fuse on 4 AWG?", "fuse-size", "no", "A 300"),  # neither word is known to fit
        ("Should I be worried? The AGM rests at 12.1 V.", "rest-voltage", "no", "Yes: 12.1"),
        # a bare yes or no that could be taken either way
        ("Wing nuts on the plus post. Not a problem for 300 A?", "terminals", "no", "That is a problem: use a hex"),
        ("My 100 Ah AGM is on a 60 A charger. No issue, is it?", "charger-size", "no", "That is a problem: 60 A"),
        ("A 350 A fuse for a 250 A thruster on 70 mm2, no problem?", "fuse-size", "yes", "No problem: a 350 A"),
        ("AGM rests at 12.0 V this morning. It's not good, is it?", "rest-voltage", "no", "No, it is not: 12.0"),
        ("My gel is charged at 14.9 V. That isn't right, is it?", "charger-setting", "no", "No, it is not: 14.9"),
        ("Is it a problem if my AGM rests at 12.1 V?", "rest-voltage", "no", "Yes: 12.1"),
        ("No problem with the charger, but is 12.1 V ok for an AGM?", "rest-voltage", "no", "No, not yet: 12.1"),
        ("AGM rests at 12.65 V. Charge it or bin it?", "rest-voltage", "yes", "Charge it: 12.65"),
        ("Wet battery at 12.7 V at rest. Charge it or bin it?", "rest-voltage", "yes", "12.7"),
        # a figure that is claimed, and whether it is close
        ("250 A in 50 mm2, 6 m each way. The yard says I lose 1 V. Is it close?", "voltage-drop", "no", "Yes: 50"),
        ("35 mm2, 4 m, 150 A. My mate reckons I lose 2 V. Is he far off?", "voltage-drop", "yes", "Yes: 35"),
        ("35 mm2, 4 m, 150 A. My mate reckons I lose 2 V. Is he close?", "voltage-drop", "yes", "No: 35"),
        # one who finds fault
        ("4 AWG and a 300 A fuse for the Minnow, the surveyor objects. Is he right?", "fuse-size", "no", "Yes: a 300"),
        ("4 AWG and a 175 A fuse for the Minnow, the surveyor is not happy. Does he have a point?", "fuse-size", "yes",
         "No: a 175"),
        ("My husband moans about 10 mm2 for 120 A over 5 m. Is he wrong?", "cable-size", "no", "No: 10"),
        ("The yard fitted a 300 A fuse on 4 AWG. Are they right?", "fuse-size", "no", "No: a 300"),
        ("My AGM refuses to rest over 12.5. Is that right?", "rest-voltage", "marginal", "Only just"),  # no person
        # what somebody says one may not do, or that it will not do
        ("My father says I can't charge lithium at minus 4. Is he right?", "charger-setting", "no", "Yes: a lithium"),
        ("The shop said never to mix AGM and gel in parallel. Is that right?", "bank-wiring", "no", "Yes: AGM"),
        ("He says a 620 CCA AGM won't run the Minnow. Is he right?", "run-check", "yes", "No: your 620"),
        ("He says a 90 Ah lithium cannot run the Pike. True?", "run-check", "no", "Yes: your 90"),
        ("She says I don't need a fuse over 175 A on 4 AWG for the Minnow. Right?", "fuse-size", "yes", "Yes: a 175"),
        ("They say I can charge lithium at minus 4. Is that true?", "charger-setting", "no", "No: a lithium"),
        # a prohibition that is put up by nobody in particular
        ("Lithium may not be charged at -5. True?", "charger-setting", "no", "Yes: a lithium"),
        ("Charging lithium below freezing is forbidden, right?", "charger-setting", "no", "Yes: a lithium"),
        ("I'm told minus 5 is a no-no for charging lithium, true?", "charger-setting", "no", "Yes: a lithium"),
        ("I was told never to put AGM on the equalise setting. Is that right?", "charger-setting", "no", "Yes: an AGM"),
        ("You mustn't mix AGM and lithium in parallel, correct?", "bank-wiring", "no", "Yes: AGM"),
        ("You can mix AGM and gel in parallel, right?", "bank-wiring", "no", "No: AGM"),
        ("Is it ok to charge lithium in the frost?", "charger-setting", "no", "No: a lithium"),
        # whether it stands the frost, whether it freezes
        ("Would a battery at 60 % survive minus 20?", "freeze-point", "yes", "Yes, it stands -20"),
        ("Half charged wet, minus 30 tonight, is it ok to leave it aboard?", "freeze-point", "no", "No, it can freeze"),
        ("Will a flat AGM make it through minus 5?", "freeze-point", "marginal", "Not for sure: "),
        ("Half charged wet, does it freeze at minus 10?", "freeze-point", "yes", "No, it will not freeze"),
        ("Half charged wet, can it freeze at minus 30?", "freeze-point", "no", "Yes, it can freeze"),
        # what a hydrometer says is a reading and no opinion
        ("Our hydrometer thing says 1.250 in five cells, 1.180 in one, is the battery dead?", "specific-gravity", "no",
         "Yes: the cells"),
        # another one, a bigger one
        ("Must I change it? A 300 A fuse on 4 AWG for the Minnow.", "fuse-size", "no", "Yes: a 300"),
        ("Do I need a bigger fuse than the 225 A on 4 AWG for the Minnow?", "fuse-size", "marginal", "A 225"),
        # how long, where it may not run at all
        ("How many minutes will the Pike run on a 90 Ah lithium?", "run-time", "no", "Not at all: your 90"),
        # a number asked for holds no belief
        ("Reserve is 120 minutes, what is that in Ah?", "rating-convert", "information", "120 min"),
        ("So RC 120 means 120 Ah?", "rating-convert", "information", "No: 120 min"),
        ("12 V AGM at 10.0 V after the lights were left on, can it be saved?", "rest-voltage", "no", "Perhaps: 10.0"),
        ("Can I leave my lithium plugged in all winter?", "storage", "marginal", "Better not: "),
        ("May wet batteries stay on the charger from November to April?", "storage", "information",
         "Yes, if it is a smart charger: "),
        # whether it is spoilt, of which a reading that tells the charge is no proof
        ("The AGM rests at 11.9 this morning, have we damaged it?", "rest-voltage", "no", "Not by this reading: 11.9"),
        ("Gel at 12.2 since Sunday. Has the fridge ruined it?", "rest-voltage", "no", "Not by this reading: 12.2"),
        ("I left the lamps on, wet battery, now 12.7 rested. Did I do it any harm?", "rest-voltage", "yes",
         "Not by this reading: 12.7"),
        ("1.175 in every cell by the hydrometer. Did the winter ruin the battery?", "specific-gravity", "no",
         "Not by this reading: a gravity of 1.175"),
        ("Cells at 1.255, one at 1.190: did we damage it?", "specific-gravity", "no", "Yes: the cells differ"),
        ("Will it ruin my gel to stand at 12.0?", "rest-voltage", "no", "Yes: 12.0"),
        # one who says so, whose motive is in doubt
        ("The dealer says my 50 mm2 is too thin for the Minnow over 5 m. Is he right or after the work?", "cable-size",
         "yes", "No: 50"),
        ("A man at the club said a 560 CCA battery is too small for a Minnow. Is he right, or does he sell them?",
         "run-check", "yes", "No: your 560"),
        ("The yard says 480 CCA is too weak for a Pike. Is that true or a sales trick?", "run-check", "no",
         "Yes: your 480"),
        ("The yard says my 480 CCA are too few for a Pike. Do they have a point or not?", "run-check", "no",
         "Yes: your 480"),
        ("The yard says my 640 CCA battery is too weak for the Minnow. Are they only out to sell me one?", "run-check",
         "yes", "Your 640"),
        # one charger, a car battery: a yes on a condition, and their own word for it
        ("Can one charger do three separate batteries?", "charger-banks", "information", "Yes, with 3 outputs"),
        ("one charger for 2 batteries ok?", "charger-banks", "information", "Yes, with 2 outputs"),
        ("Do I need two chargers for two batteries?", "charger-banks", "information", "A charger with 2 outputs"),
        ("How many outputs for engine, house and bow?", "charger-banks", "information", "A charger with 3 outputs"),
        ("Is a bow thruster battery just a car battery?", "battery-duty", "information", "Yes in kind: a car battery"),
        ("Are thruster batteries different from starter batteries?", "battery-duty", "information",
         "No, not in kind: a starter battery"),
        ("Is a leisure battery the same as a thruster battery?", "battery-duty", "information", "No: a leisure"),
        ("Can I use a truck battery for my bow thruster?", "battery-duty", "information",
         "Yes, if its CCA is high enough: a truck battery"),
        # no power where it is laid up
        ("Can a full gel stand untouched for four months at 10 C? There is no power.", "storage", "yes",
         "Yes, but look every 90 days"),
        ("Is a wet battery ok for 12 months at 20 C with no shore power?", "storage", "no",
         "No: take it home or bring a charger there in between: charged full, your wet-cell battery is down to"),
        ("Laid up 4 months at 10 C, AGM, no electricity there. How do I leave it?", "storage", "yes",
         "Charge it full before you leave her"),
        # isolated or not, by what was told
        ("24 V bank of its own two AGMs, 12 V alternator, one negative for all. Must a 12 to 24 charger be isolated?",
         "dc-dc", "information", "No, it need not be isolated: both sides share one negative, and the 12 V"),
        ("Does my 12 to 24 V converter have to be isolated? Both sides share one negative.", "dc-dc", "information",
         "No, it need not be isolated, as both sides share one negative; only"),
        ("Must a 12 to 24 V converter be isolated? One negative for both, the start battery is separate.", "dc-dc",
         "information", "No, it need not be isolated: both"),
    ],
)  # fmt: skip
def test_a_headline_opens_with_the_answer_to_the_question(text, topic, verdict, opens):
    found = next(item for item in default_desk().ask(text).answers if item.topic == topic)
    assert (found.verdict, found.headline.replace("\u00a0", " ")[: len(opens)]) == (verdict, opens)


@pytest.mark.parametrize(
    ("verdict", "headline", "put", "expected"),
    [
        ("yes", "Yes: it holds.", "good", "Yes: it holds."),
        ("yes", "Yes: it holds.", "bad", "No: it holds."),
        ("no", "No, not yet: it is low.", "bad", "Yes: it is low."),
        ("no", "No: it is low.", "passed", "Fail: it is low."),
        ("marginal", "Only just: it is low, so charge it soon.", "remedy", "Yes: it is low, so charge it soon."),
        ("yes", "Yes: it is good.", "remedy", "No: it is good."),
        ("yes", "Yes, but look every 90 days: it is good.", "remedy", "No, but look every 90 days: it is good."),
        ("no", "No: 9.8 V is deeply flat.", "remedy", "9.8 V is deeply flat."),  # nothing there says to charge it
        ("no", "Yes: it will freeze.", "bad", "Yes: it will freeze."),  # the topic has turned it already
        ("marginal", "Only just: it fits.", "bad", "It fits."),
        ("no", "No: it is low.", "open", "It is low."),
        ("needs-facts", "We can't say yet: tell us more.", "open", "We can't say yet: tell us more."),
    ],
)
def test_the_first_word_is_turned_or_dropped(verdict, headline, put, expected):
    assert opened(Answer("rest-voltage", verdict, headline), put).headline == expected


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "Manual says 350 A at 12 V, got offered a flooded battery of 540 CCA for 40 quid. no good is it?",
            "No, it is not",
        ),
        ("My thruster draws 200 A, 12 V, the battery is 850 CCA AGM. no good is it?", "It is good"),
        ("12.1 V at rest, AGM. Not much use is it?", "No, it is not"),
        ("My thruster takes 350 A at 12 V and the AGM has 500 CCA. Not enough, is it?", "Not enough"),
        ("Thruster takes 300 A at 12 V, battery 720 CCA wet. Not big enough is it?", "Just enough"),
        ("Thruster takes 200 A at 12 V, battery 900 CCA wet. That isn't enough, is it?", "It is enough"),
        ("Is 540 CCA no good for a 350 A 12 V thruster?", "Yes"),
        ("Is 540 CCA any good for a 350 A 12 V thruster?", "No"),
        ("Is 540 CCA enough for a 350 A 12 V thruster, or isn't it?", "No"),
    ],
)
def test_a_tag_that_calls_it_bad_is_answered_by_the_word_itself(text, opens):
    assert default_desk().ask(text).answers[0].headline.partition(":")[0] == opens

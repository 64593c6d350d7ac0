"""Cautions of the place: chemicals, glass, wind, electricity, fire, heat, children, our limits."""

from __future__ import annotations

from benchround.core.caution.kind import Caution, Repeat, Severity

SITE = (
    Caution(
        "C31",
        "chemical",
        Severity.HIGH,
        "Pests: only products approved here, used as labelled",
        "What may be sprayed, on what and how much stands on the product's label, and the label "
        "binds you by law. Benchround names no product and gives no dose.",
        Repeat.EVERY_TIME,
        "US EPA, read the label first; Which? Gardening (read); binding by law: from memory",
    ),
    Caution(
        "C32",
        "chemical",
        Severity.HIGH,
        "Garden chemicals: own bottle, locked up, none down drains",
        "Leave each product in the bottle it came in, shut, cool, dry and behind a lock. Leftovers "
        "go where your council takes them, not into sink, drain or ditch.",
        Repeat.YEARLY,
        "Which? Gardening; US EPA, read the label first (read)",
    ),
    Caution(
        "C33",
        "chemical",
        Severity.MEDIUM,
        "Feed: measure by its label, gloves, no drinks bottles",
        "Strength and interval are on the feed's own label. Concentrate irritates skin, so use "
        "gloves; made-up feed in a lemonade bottle gets drunk.",
        Repeat.YEARLY,
        "RHS news 2010, gloves; Which? Gardening (read); rest from memory",
    ),
    Caution(
        "C34",
        "chemical",
        Severity.HIGH,
        "Slug bait: lawful kinds only, sparingly, off pets' paths",
        "Metaldehyde kills dogs and wildlife and may not be used in Great Britain; elsewhere the "
        "law differs. Any bait that is allowed goes down thinly as its label tells. "
        "Picking slugs off by hand at dusk needs none.",
        Repeat.YEARLY,
        "Veterinary Poisons Information Service 2022 (read)",
    ),
    Caution(
        "C35",
        "chemical",
        Severity.HIGH,
        "Mouse traps: boxed in; poison only by your local rules",
        "A trap breaks small fingers, paws and wings as well. Set it under a cover only a mouse "
        "can enter, look at it daily, and turn to bait only as your country's rules allow.",
        Repeat.YEARLY,
        "from memory",
    ),
    Caution(
        "C38",
        "glass",
        Severity.HIGH,
        "Glass lid: gloves, both hands, one by one, no wind",
        "A slipping pane cuts to the bone. Hold each light at both sides with gloved hands, set it "
        "down before taking the next, leave it alone in wind, and swap cracked panes for safety "
        "glazing.",
        Repeat.YEARLY,
        "Good Egg home safety; The Times with RoSPA figures (read); handling: from memory",
    ),
    Caution(
        "C39",
        "glass",
        Severity.HIGH,
        "Children: fence the glass frame or use safety glazing",
        "A running child who trips goes through ordinary glass. Glaze with plastic or safety "
        "glass, or put a barrier round the frame, and fasten its lids.",
        Repeat.AT_SETUP,
        "Good Egg home safety; The Times with RoSPA figures (read)",
    ),
    Caution(
        "C40",
        "wind",
        Severity.HIGH,
        "Gusts coming: latch or lay lids down, hold by the frame",
        "A gust throws a loose lid onto hands or over a hedge. Fasten it or take it off in good "
        "time, gripping the wood or metal and never the pane.",
        Repeat.EVERY_TIME,
        "from memory; what wind does on land: Beaufort scale (read)",
    ),
    Caution(
        "C44",
        "electric",
        Severity.VERY_HIGH,
        "Mains heat near water: damp-proof kit behind a tested RCD",
        "Water and mains can kill. Only equipment built for damp places, fed through a 30 mA "
        "residual-current device that you test, with leads uncoiled, looped low before the plug "
        "and out of puddles; fixed wiring is for a licensed electrician under your local code.",
        Repeat.YEARLY,
        "RoSPA NI, garden electric safety; nidirect (read); loops and coils: from memory",
    ),
    Caution(
        "C45",
        "electric",
        Severity.HIGH,
        "Heated bench: pull the plug before any water comes near",
        "Cut the current where the lead meets the wall before a can, a cloth or a wet hand comes "
        "near mats and cables, and put it on again once all is dry.",
        Repeat.EVERY_TIME,
        "RoSPA NI, unplug before checking (read); watering: from memory",
    ),
    Caution(
        "C46",
        "gas",
        Severity.VERY_HIGH,
        "Fuel heater: carbon monoxide kills; air it, fit an alarm",
        "Paraffin, kerosene and gas use up air and make a gas nobody smells; seedlings are maimed "
        "by the fumes too. Light no such heater in a shut space: keep a vent open, hang a carbon "
        "monoxide alarm, and go out at the first headache.",
        Repeat.EVERY_TIME,
        "Iowa State Univ. Extension, O'Malley 2010 (read); headache: from memory",
    ),
    Caution(
        "C47",
        "heat",
        Severity.MEDIUM,
        "Hot day: start early, drink, keep out of shut glass",
        "Under glass it is far hotter than the forecast. Do heavy work at dawn or dusk, take water "
        "with you, and leave as soon as you feel giddy or sick.",
        Repeat.FIRST_OF_DAY,
        "US CDC gardening tips, as quoted (read); limits of temperature: from memory",
    ),
    Caution(
        "C50",
        "children",
        Severity.VERY_HIGH,
        "A child can drown in a water tray: empty or cover it now",
        "Five centimetres of water are enough to drown a small child, without a sound. Empty each "
        "tray when the plants have drunk, lid butts and tanks, store pots upside down, and never "
        "leave a full tray unwatched.",
        Repeat.YEARLY,
        "nidirect, garden safety (read)",
    ),
    Caution(
        "C51",
        "children",
        Severity.HIGH,
        "Poisonous seed: bowls and packets out of children's reach",
        "Soaking and drying seed looks like sweets or beans. Put it high up or behind a door, and "
        "tell children that nothing from the bench is eaten without asking.",
        Repeat.YEARLY,
        "RHS, harmful garden plants; Good Egg home safety (read)",
    ),
    Caution(
        "C56",
        "limits",
        Severity.MEDIUM,
        "Dates and forecasts here are estimates: look first",
        "When it will freeze, when seed comes up and how hot a frame gets are reckoned from rules "
        "and a forecast, and both can be wrong. What you see on the bench counts for more.",
        Repeat.AT_SETUP,
        "our own rule",
    ),
    Caution(
        "C57",
        "limits",
        Severity.MEDIUM,
        "Damping off: air and drier compost before any fungicide",
        "Clean trays, moving air and less water stop most of it. A fungicide may go on seedlings "
        "only where its label names that use.",
        Repeat.YEARLY,
        "Michigan State Univ., damping off: hygiene (read); label: from memory",
    ),
)

"""Cautions of the work itself: compost, water, hands, tools, loads and paths."""

from __future__ import annotations

from benchround.core.caution.kind import Caution, Repeat, Severity

WORK = (
    Caution(
        "C01",
        "dust",
        Severity.HIGH,
        "Compost dust: damp it, face away, gloves, mask if dusty",
        "Bagged compost may hold Legionella longbeachae, whose dust on rare occasions gives a "
        "grave lung infection. Slit the bag gently, looking the other way, wet the compost "
        "before it is moved about, and put on gloves, with a mask that seals if dust still rises. "
        "Later fever or cough: tell a doctor that you work with compost.",
        Repeat.FIRST_OF_DAY,
        "health services of Queensland, Lothian, Southland and Western Australia (read); "
        "RHS news 2010, risk in Britain very low (read)",
    ),
    Caution(
        "C02",
        "dust",
        Severity.MEDIUM,
        "Indoors: open door and vents before handling compost",
        "In a shut room, shed or greenhouse the dust of compost hangs in the air you breathe. "
        "Carry the job outside, or let a draught through first.",
        Repeat.YEARLY,
        "RHS news 2010; NHS Lothian 2013; Southern Health NZ (read)",
    ),
    Caution(
        "C03",
        "hygiene",
        Severity.HIGH,
        "Wash your hands before food, drink, smoke or your face",
        "Gloves or no gloves, soap and water come next after touching compost, soil or seed: "
        "before the mask comes off, and before anything goes into your mouth.",
        Repeat.EVERY_TIME,
        "RHS news 2010; Southern Health NZ; Queensland, potting mix (read)",
    ),
    Caution(
        "C04",
        "storage",
        Severity.MEDIUM,
        "Keep compost bags shut and in the cool",
        "Legionella multiplies in warm compost. Fold bags closed and store them in shade, not in a "
        "greenhouse, a frame or a shed that bakes.",
        Repeat.YEARLY,
        "RHS news 2010; Health Protection Scotland 2013, in a newspaper (read)",
    ),
    Caution(
        "C05",
        "medical",
        Severity.HIGH,
        "Fever or cough within two weeks: tell a doctor you garden",
        "Legionnaires' disease begins like influenza, some days after the compost was breathed in. "
        "With fever, cough or short breath inside a fortnight, go to a doctor and mention the "
        "compost, so that the right test is made.",
        Repeat.YEARLY,
        "Queensland, potting mix; Toi Te Ora, soils and compost (read); two weeks: Scottish "
        "inquiry 2013 (read)",
    ),
    Caution(
        "C06",
        "dust",
        Severity.MEDIUM,
        "Compost heap: wet it before you turn it",
        "A dry heap throws mould spores when it is opened. Water it first and turn it in the open "
        "air; anybody with asthma or poor defences should leave it to someone else.",
        Repeat.YEARLY,
        "RHS, health risks in the garden (read)",
    ),
    Caution(
        "C07",
        "dust",
        Severity.MEDIUM,
        "Vermiculite: damp it and open it in the open air",
        "Its fine dust should not be breathed, so moisten it in the bag, outside. Do not open an "
        "old bag nobody can vouch for: some mines of the past had asbestos in the rock.",
        Repeat.YEARLY,
        "US EPA study of 2000: risk at home very low, keep damp (read); old bags: from memory",
    ),
    Caution(
        "C08",
        "dust",
        Severity.LOW,
        "Perlite: wet it inside the bag before pouring",
        "Dry perlite gives off a sharp white dust that stings eyes and throat. Pour water into the "
        "bag first.",
        Repeat.YEARLY,
        "from memory",
    ),
    Caution(
        "C09",
        "water",
        Severity.MEDIUM,
        "Warm butt or hose: run it off, do not spray it",
        "Legionella breeds in water that stands lukewarm, and spraying puts it into the air. Shade "
        "and lid the butt, scrub it each year, and let a sun-warmed hose run to waste at ground "
        "level before use.",
        Repeat.YEARLY,
        "RHS news 2010; RHS, health risks in the garden; CIPHE, advice for gardeners (read)",
    ),
    Caution(
        "C10",
        "water",
        Severity.MEDIUM,
        "Mist with fresh cold water, never from a warm tank",
        "Fine droplets go deep into the lungs. Fill the mister from the cold tap each time; stored "
        "water warmer than a cool room belongs in the can, poured low.",
        Repeat.YEARLY,
        "RHS news 2010 (read)",
    ),
    Caution(
        "C11",
        "hygiene",
        Severity.MEDIUM,
        "Mice or rats about: gloves on, cuts covered",
        "Rodent urine in trays, butts and heaps can pass on leptospirosis through broken skin or "
        "the mouth. Plaster over scratches, glove up, and wash before you eat.",
        Repeat.PER_CROP,
        "RHS, health risks in the garden (read)",
    ),
    Caution(
        "C12",
        "medical",
        Severity.MEDIUM,
        "Soil in a cut: clean it now; is your tetanus jab current?",
        "Tetanus lives in soil and gets in through small wounds. Rinse and dress any cut straight "
        "away, and ask your own health service when your next vaccination is due.",
        Repeat.YEARLY,
        "RHS, health risks in the garden; US CDC gardening tips, as quoted (read)",
    ),
    Caution(
        "C30",
        "dust",
        Severity.MEDIUM,
        "Cleaning seed: out of doors, with mask and goggles",
        "Chaff, hairs and mould blow about when seed is rubbed and winnowed, and the chaff of a "
        "poisonous plant is poisonous too. Stand upwind outside and cover nose, mouth and eyes.",
        Repeat.YEARLY,
        "from memory",
    ),
    Caution(
        "C36",
        "chemical",
        Severity.MEDIUM,
        "Bleach for trays: cold water, gloves, nothing mixed in",
        "Household bleach gives off poisonous gas with acids and other cleaners. Dilute it as its "
        "label says in cold water only, where air moves, with gloves, and rinse trays well.",
        Repeat.YEARLY,
        "Univ. of Arizona Master Gardener Manual, bleach rinse (read); never mix: from memory",
    ),
    Caution(
        "C37",
        "fire",
        Severity.MEDIUM,
        "Do not bake soil in the kitchen oven",
        "Soil heated at home smells foul, is easily overdone until it harms plants, and can "
        "scorch. Fresh bought seed compost does the job.",
        Repeat.YEARLY,
        "Univ. of Arizona Master Gardener Manual, sterilising (read); advice our own",
    ),
    Caution(
        "C41",
        "trip",
        Severity.MEDIUM,
        "Dark or frosty: light the path, mind hose and pots",
        "Most falls on the round come from a hose, a pot or slimy paving not seen. Keep the "
        "walking line bare, roll hoses up, and take a lamp before sunrise.",
        Repeat.YEARLY,
        "nidirect, garden safety; newspaper with RoSPA figures, 2002 (read)",
    ),
    Caution(
        "C42",
        "eyes",
        Severity.HIGH,
        "Canes: cap each one before you bend down",
        "A bare cane end is hard to see from above and can blind an eye. Put a cap on as each cane "
        "goes in, and wear glasses while tying.",
        Repeat.YEARLY,
        "from memory; canes as a cause of injury: The Times with RoSPA figures (read)",
    ),
    Caution(
        "C43",
        "lifting",
        Severity.MEDIUM,
        "Heavy trays and bags: slide, split or wheel them",
        "Watered trays and full bags weigh more than they look. Take one at a time, hug it close "
        "with knees bent and back upright, halve big bags, or fetch the barrow.",
        Repeat.YEARLY,
        "Gardeners' World, moving and lifting (read)",
    ),
    Caution(
        "C48",
        "tools",
        Severity.MEDIUM,
        "Blades: file or sand hard seed; cut away from yourself",
        "A knife slips on small hard seed, so wear the coat down with sandpaper or a file instead. "
        "With snips and knives keep the other hand, gloved, behind the edge.",
        Repeat.YEARLY,
        "from memory; sandpaper: perennials mailing list 2001 (read)",
    ),
    Caution(
        "C49",
        "heat",
        Severity.LOW,
        "Soaking water: no hotter than your hand can rest in",
        "Boiling water scalds people and cooks seed. Leave the kettle's water to cool until a hand "
        "stays in it in comfort, then add the seed.",
        Repeat.YEARLY,
        "perennials mailing list 2001, hand-hot start (read)",
    ),
)

"""Cautions of the plants: poison, sap, mix-ups, animals, and the law on plants."""

from __future__ import annotations

from benchround.core.caution.kind import Caution, Repeat, Severity

PLANTS = (
    Caution(
        "C13",
        "poison",
        Severity.HIGH,
        "Poisonous: never eat any of it; if eaten, get help at once",
        "Flowers raised for show are not food. Should anyone swallow some, ring your own poison "
        "line or a doctor straight away, keep a bit of the plant to show, and do not bring on "
        "vomiting.",
        Repeat.CROP_PAGE,
        "RHS, potentially harmful garden plants (read)",
    ),
    Caution(
        "C14",
        "poison",
        Severity.HIGH,
        "Foxglove: all of it poisons; gloves, label, away from food",
        "Every part of a foxglove acts on the heart. Glove up, stand its trays away from salad and "
        "herbs, and label each one: young leaves are easily taken for comfrey or borage.",
        Repeat.PER_CROP,
        "GardenForum list; Amateur Gardening list; ASPCA list (read); look-alikes: from memory",
    ),
    Caution(
        "C15",
        "poison",
        Severity.HIGH,
        "Monkshood: deadly, through broken skin too; gloves always",
        "Few garden plants poison as strongly as aconite, and its juice gets in through scratches. "
        "Never prick out or cut it with bare hands, and let no seed or root near a kitchen.",
        Repeat.EVERY_TIME,
        "GardenForum list; Amateur Gardening list (read); how strong: from memory",
    ),
    Caution(
        "C16",
        "poison",
        Severity.HIGH,
        "Delphinium, larkspur: plant and seed poison; gloves",
        "Young plants and seed hold most of the poison. Work in gloves, sweep up spilt seed, and "
        "leave none lying where a child or an animal comes by.",
        Repeat.PER_CROP,
        "Amateur Gardening list; Organic Gardening, larkspur and cats (read); people: from memory",
    ),
    Caution(
        "C17",
        "poison",
        Severity.VERY_HIGH,
        "Castor bean: few seeds can kill; count and lock them up",
        "Ricin from no more than a few chewed seeds can be fatal to children and dogs. Tally "
        "every seed in and out, store them under lock, wear gloves since crushed seed can set "
        "off violent allergy, and save none where young children live.",
        Repeat.EVERY_TIME,
        "NC State Univ., poisonous plants; ASPCA list (read)",
    ),
    Caution(
        "C18",
        "poison",
        Severity.MEDIUM,
        "Lupin seed: bitter garden lupins are not for eating",
        "The lupin beans sold as food are sweet strains. Seed of border lupins holds bitter "
        "alkaloids that make people ill: pack and label it as poison.",
        Repeat.PER_CROP,
        "newspaper column on the RHS list (read second-hand); sweet and bitter: from memory",
    ),
    Caution(
        "C19",
        "poison",
        Severity.MEDIUM,
        "Sweet pea: seed and pods are no peas; keep them apart",
        "Pods and seed pass for garden peas and are harmful to eat in quantity. Never store, "
        "soak or dry them beside peas meant for the kitchen or the plot.",
        Repeat.PER_CROP,
        "encyclopaedia quoted in a forum (read second-hand); list of plants toxic to cats (read)",
    ),
    Caution(
        "C20",
        "poison",
        Severity.HIGH,
        "Laburnum: pods and seed poison, and children like them",
        "Hanging pods look like something to play with or eat. Pick them up before they open, and "
        "give no laburnum a place where children play.",
        Repeat.PER_CROP,
        "GardenForum list (read); pods and children: from memory",
    ),
    Caution(
        "C21",
        "poison",
        Severity.MEDIUM,
        "Bulbs: box and label them, well away from onions",
        "Daffodil bulbs have been cooked as onions. Give flower bulbs a marked box outside the "
        "kitchen, and handle them in gloves if they make your fingers itch.",
        Repeat.PER_CROP,
        "Public Health England on daffodils, in The Independent 2015 (read); itch: from memory",
    ),
    Caution(
        "C22",
        "poison",
        Severity.MEDIUM,
        "Harmful seed: no herb or spice; store it well apart",
        "Swallowing this seed does harm, and loose seed in a jar looks like any spice. Dry it "
        "where no food is made and write on the packet what it is. Some countries restrict some "
        "kinds by law.",
        Repeat.PER_CROP,
        "GardenForum and Amateur Gardening lists (read); tobacco flower, opium poppy: from memory",
    ),
    Caution(
        "C23",
        "sap",
        Severity.HIGH,
        "Spurge sap burns: gloves and goggles, rinse at once",
        "White sap of Euphorbia blisters skin and can hurt the eye badly. Protect hands and eyes "
        "for every cut or broken stem, and flush splashes with plenty of water right away.",
        Repeat.EVERY_TIME,
        "Amateur Gardening list; Daily Telegraph 2010, staying safe, as reproduced (read)",
    ),
    Caution(
        "C24",
        "sap",
        Severity.HIGH,
        "Sap plus sun blisters: cover arms, or wait for evening",
        "Juice of rue, ammi and many relatives of carrot makes skin burn in daylight, hours later "
        "and for weeks. Cover hands and forearms, choose evening or a dull day, and wash off any "
        "juice as soon as you stop.",
        Repeat.EVERY_TIME,
        "RHS, harmful garden plants; Daily Telegraph 2010 (read); ammi: from memory",
    ),
    Caution(
        "C25",
        "sap",
        Severity.LOW,
        "May bring on a skin allergy: gloves if hands itch",
        "Sap, hairs or leaves of this plant trouble the skin of some who touch it again and again. "
        "Wear gloves from the first sign of itching.",
        Repeat.CROP_PAGE,
        "GardenForum list; Amateur Gardening list (read); tulip: from memory",
    ),
    Caution(
        "C26",
        "mix-up",
        Severity.HIGH,
        "Label gone or flowers beside salad: eat none of it",
        "Seedlings of food and of poisonous flowers look alike. A tray nobody can name is not for "
        "the plate, and the two sorts stand on different shelves.",
        Repeat.EVERY_TIME,
        "daffodil mix-ups, The Independent 2015; RHS, harmful garden plants (read); rule our own",
    ),
    Caution(
        "C27",
        "mix-up",
        Severity.MEDIUM,
        "Fridge: seed in a sealed box marked NOT FOOD",
        "Chilling seed shares a fridge with things people eat. Close it into one lidded box that "
        "holds nothing else and says in large letters that it is not food.",
        Repeat.EVERY_TIME,
        "from memory",
    ),
    Caution(
        "C28",
        "mix-up",
        Severity.MEDIUM,
        "Saved squash seed: a bitter fruit is a poisonous fruit",
        "Courgettes, squashes and cucumbers whose parents crossed by chance may turn bitter "
        "and then make people ill. Spit out whatever tastes bitter and throw the whole fruit away.",
        Repeat.PER_CROP,
        "from memory",
    ),
    Caution(
        "C29",
        "chemical",
        Severity.HIGH,
        "Dressed seed: gloves, no soaking, away from food and pets",
        "Dyed seed has been treated with a chemical; the packet says which. Handle it gloved and "
        "away from food, neither soak nor sift it, cover all of it, and leave none where a child, "
        "a pet or a bird finds it.",
        Repeat.EVERY_TIME,
        "European Seed Association; South Carolina and Illinois seed rules (read); soaking: from "
        "memory",
    ),
    Caution(
        "C52",
        "pets",
        Severity.HIGH,
        "Harms animals: keep trays and trimmings out of reach",
        "Dogs, cats, horses and stock nibble at trays, bulbs and heaps of cuttings. Fence or lid "
        "them off, and if one has eaten some, phone a vet and say which plant.",
        Repeat.PER_CROP,
        "RHS, harmful garden plants; ASPCA list; list of plants toxic to cats (read)",
    ),
    Caution(
        "C53",
        "law",
        Severity.HIGH,
        "May be listed as invasive: look at your own list first",
        "In some countries growing this plant or throwing it away outdoors is an offence. Look "
        "at your own authority's list, cut heads before the seed falls, and get rid of "
        "waste as it tells you.",
        Repeat.EVERY_TIME,
        "RHS, invasive plants; Defra 2011, code of practice (read)",
    ),
    Caution(
        "C54",
        "law",
        Severity.MEDIUM,
        "Seed or plants going abroad: ask about papers first",
        "Plant health rules cover gifts and swaps as well as sales. Ask before you post plants or "
        "seed abroad or carry them over a frontier.",
        Repeat.YEARLY,
        "from memory",
    ),
    Caution(
        "C55",
        "law",
        Severity.LOW,
        "Wild or protected: ask before collecting or selling seed",
        "Protected plants, and those on another's land, are gathered from only with leave. "
        "Seed of a variety with plant breeders' rights may not be sold.",
        Repeat.YEARLY,
        "from memory",
    ),
)

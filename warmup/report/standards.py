"""The standards that levels exercise or lead toward, each told in our own words by its code.

Codes are those of the Common Core State Standards for Mathematics (National Governors Association Center for
Best Practices and Council of Chief State School Officers, 2010).
"""

SOURCE = (
    "The codes are those of the Common Core State Standards for Mathematics (2010), told here in our own "
    "words. States have editions of their own."
)
WORDS = {
    "K.CC.A.1": "Say the number words up to one hundred, going one at a time and also ten at a time.",
    "K.CC.A.2": "Pick up the count from a number other than one, inside the stretch the child already knows.",
    "K.CC.A.3": (
        "Write the numerals zero to twenty and put a written numeral to a number of things, with zero "
        "for nothing there."
    ),
    "K.CC.B.4": "Grasp that counting tells how many.",
    "K.CC.B.4.A": (
        "While counting things, use the words in their usual order, one word to each thing and one thing"
        " to each word."
    ),
    "K.CC.B.4.B": (
        "Know the final word said is the size of the whole lot, however the things are laid out or in "
        "whatever order they were counted."
    ),
    "K.CC.B.4.C": "Know each next number word means exactly one more thing.",
    "K.CC.B.5": (
        "Tell how many in a row, ring or array, or in a jumble, and count out a wanted number of things."
    ),
    "K.CC.C.6": (
        "Say whether one group has more, fewer or just as many things as another, by matching or counting."
    ),
    "K.CC.C.7": "Say which of two written numerals is the greater.",
    "K.G.A.1": "Name shapes seen around you and tell where things are with place words.",
    "K.G.A.2": "Give a shape its right name however it is turned and whatever its size.",
    "K.G.A.3": "Tell flat shapes from solid ones.",
    "K.G.B.4": (
        "Talk about how flat and solid shapes are alike and different: how many sides, how many corners,"
        " sides the same length."
    ),
    "K.G.B.5": "Build shapes from sticks and the like, and draw them.",
    "K.G.B.6": "Put small shapes together to make bigger ones.",
    "K.MD.A.1": (
        "Say what can be measured about a thing, such as how long or how heavy it is; one thing may have"
        " several."
    ),
    "K.MD.A.2": (
        "Set two things side by side on one measure, say which has more or less of it, and tell the "
        "difference."
    ),
    "K.MD.B.3": "Sort things into named groups, count each group and put the groups in order of size.",
    "K.NBT.A.1": (
        "Take the numbers eleven to nineteen apart as ten ones and some more ones, and put them back "
        "together."
    ),
    "K.OA.A.1": (
        "Act out adding and taking away with things, fingers, claps, pictures, words or number sentences."
    ),
    "K.OA.A.2": (
        "Work out adding and taking-away stories, and sums and differences, with totals no bigger than ten."
    ),
    "K.OA.A.3": "Split a number up to ten into two parts, in more than one way.",
    "K.OA.A.4": "For each number from one to nine, find its partner that makes ten.",
    "K.OA.A.5": "Add and take away smoothly with totals no bigger than five.",
    "1.G.A.3": (
        "Cut circles and rectangles into two or four equal parts; say halves, fourths, quarters; more "
        "parts means smaller parts."
    ),
    "1.MD.A.2": "Say how many equal units long a thing is when they lie end to end, without gap or overlap.",
    "1.MD.B.3": "Tell and write clock time to the hour and the half hour, on hands and on digits.",
    "1.NBT.A.1": (
        "Count on from any number to one hundred twenty; read and write those numerals and match them to"
        " amounts."
    ),
    "1.NBT.B.2": "Read a two-digit number as so many tens and so many ones.",
    "1.NBT.B.2.C": "See ten, twenty ... ninety as one to nine tens and no ones.",
    "1.NBT.B.3": "Compare two two-digit numbers by their tens, then their ones.",
    "1.NBT.C.5": "Say ten more or ten less than a two-digit number in the head, without counting.",
    "1.OA.A.1": (
        "Solve spoken stories with sums and differences up to twenty, whichever of the three numbers is "
        "the one not known."
    ),
    "1.OA.C.5": "Tie counting to adding and taking away, as in counting on two to add two.",
    "1.OA.C.6": (
        "Add and take away with totals up to twenty, smoothly up to ten, by counting on, making ten, "
        "near doubles and fact families."
    ),
    "2.MD.B.6": (
        "Show whole numbers as lengths from zero on a number line, and sums and differences up to a "
        "hundred on it."
    ),
    "2.MD.C.8": (
        "Work out money stories with dollar bills, quarters, dimes, nickels and pennies, using the "
        "dollar and cent signs."
    ),
    "2.NBT.A.1": "Read the three digits of a number as hundreds, tens and ones; a hundred is ten tens.",
    "2.NBT.A.2": "Count within a thousand, and skip-count by fives, tens and hundreds.",
    "2.OA.C.3": (
        "Say whether a group is odd or even by pairing or counting in twos; an even number is a double."
    ),
    "4.G.A.3": (
        "Know a line of symmetry as a fold that lands one half exactly on the other; find such lines and"
        " the shapes that have them."
    ),
}
"""What each code asks of a child, in one sentence."""


def place(code: str) -> tuple[int, str]:
    """Orders codes by grade, kindergarten first, then by their letters."""
    grade, _, rest = code.partition(".")
    return (0 if grade == "K" else int(grade)), rest

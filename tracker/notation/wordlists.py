"""Words of written instructions, by what they do in a sentence."""

from __future__ import annotations


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def _list(text: str) -> tuple[str, ...]:
    return tuple(text.split())


#: Words for a stitch as a place, for a chain, and for the space under chains.
STITCH_WORDS = _list("st sts stitch stitches place spot post posts stich")
CHAIN_WORDS = _list("ch chs chain chains")
SPACE_WORDS = _list("sp sps space spaces loop loops lp lps arch arches arc arcs mesh meshes")
LOOP_WORDS = _list("blo flo bl fl blp flp bls fls tbl tfl blos flos")
#: What lies behind a chain or a half double crochet.
BUMPS = _list("bump bumps hump humps ridge ridges bar bars")
RING_WORDS = _list("ring circle mr mc")

#: Words for rounds and rows, and for "to the end of this one".
ROUND_WORDS = _list("rnd rnds round rounds row rows rd rds r rs")
#: Said of a whole round that is told before or beside it, not of the next stitches.
CHANGING = _list("increasing decreasing")
END_WORDS = _list("around across round")
#: Words for the chain that a round begins with.
BEGINNING = _list("beg beginning turning starting start first")

#: Words that lead to a place, that say where on the stitch, and that add nothing.
PREPOSITIONS = _list(
    "in into on onto over through under within thru to inside round around at across"
)
MIDDLE = _list("center centre middle")
ON_THE_STITCH = _list("top base post posts back middle center centre tip eye eyes")
ON_THE_ROW = _list("side sides end ends edge edges")
NOISE = _list("the a an of your both this these it to")

#: Words before what is made, and words that pass over places.
VERBS = _list(
    """knit lift work working make do complete crochet crocheting then just place placing put
    putting adding making"""
)
SKIPS = _list("sk skip miss skipping missing")

#: Words that ask for a repeat, and words round the stars or brackets they name.
AGAIN = _list("rep repeat repeats rpt continue cont repeating repeated repear complete")
#: Words for one of each in turn.
ALTERNATELY = _list("alternate alternating alternately")
ABOUT_STARS = _list(
    """from between the to and s bet in directions what is brackets bracket instructions
    across sequence pattern this that for repeating manner way fashion like same"""
)
#: Words before what ends a round.
TAIL_WORDS = _list("ending end ends finish finishing")

#: Words for closing a round, for ending the work, for the chain's other side.
JOINS = _list("join joining connect close attach rejoin")
ENDINGS = _list("fasten finish tie end cut break bind")
OTHER_SIDE = _list("other otherside opposite underside back bottom lower underneath")
OTHER_SIDE_LEAD = _list(
    """turn and work working going go across along down on the in continue now around to from
    do not up rotate piece free unused remaining loops loop lps through into your so you can it
    will that as"""
)

#: Words and signs that part one element from the next.
SEPARATORS = _list(""", ; . : & and then + also now again finally - ' " /""")


#: Words of advice and finishing: a clause with one of them, and no stitch and no shaping
#: word in it, asks for nothing that is counted.
CRAFT = _words(
    """mark marker markers marking tail sew sewing sewn weave stuff stuffing fill filling tie
    tied tighten needle spiral strand strands knuckle wrap picture photo photos video method flat
    gently petals arms legs rotate rotating leg foot feet
    head back center centre facing holding hold hook size gauge desired larger smaller
    attach pin remove replace begin ensure draw drawing insert pull note notes see you your yoh
    yo loop through multiple multiples slip knot tight underlined layer layers
    eye eyes safety nose mouth embroider felt button buttons bead beads wire hair glue hole
    gather seam apart fold folding flatten flattened fold folded press pinch"""
)

#: What the hands do to lay a piece in two layers.
FOLDS = _words("fold folded folding flatten flattened flattening flat pinch pinched half")

#: What the hands do to make one stitch.
HANDS = _words("draw drawing insert inserting pull pulling")

#: Short words that may stand alone without asking for anything.
IDLE = _words(
    """spiral marker mark cut fo end done turn join begin start yarn fasten off close body head
    arm arms leg legs ear ears tail hat brim cuff base top side sides crown even rs ws rep again
    tip work stuff sew weave flip rotate tie color colour cont then note next rnd round rounds
    row rows rnds ch right left wrong front back you now small medium large both each make good
    great nice yay phew super lovely easy"""
)

#: Short words of rounds that are no name of a yarn, also where they are in capitals.
NOISE_OF_ROUNDS = _words("rnd rd row r fo rs ws st sts beg all one two the a an any")

#: Verbs before a last stitch, or its last loops, that a new yarn closes; words on when in
#: the making of that stitch the yarn is changed.
CLOSING = _words(
    """completing complete finishing finish closing drawing draw pulling pull picking pick
    working work dropping drop yarning"""
)
WHEN = _words(
    """the last final end of this that each st sts stitch stitches yo yoh yarn over pull through
    loop loops lp lps two 2 step half hook on in at rnd rnds round row rows"""
)

#: Words that say how the stitches below are used.
SHAPING = _words(
    """sk skip miss omit omitting except unworked increase decrease increasing decreasing inc dec
    incs decs repeat rep repeating evenly straight unchanged even tog double doubling extra
    plus short"""
)

#: Words that change a round which is worked as an earlier one.
ALTERING = _words(
    """omit omits omitting except excepting inc incs dec decs increase increases increasing
    decrease decreases decreasing instead extra twice double plus fewer less unworked skip skipping
    miss missing"""
)

#: Words that could change a count: a clause with one of them is never passed over.
WORKING = SHAPING | _words(
    """leave leaving same next until elsewhere stitch stitches sts st sp space ch chain work
    corner first last times half between alternate alternately alternating twice remaining
    around across together each every"""
)

#: Words with which what was just said is bounded: "2 sc per side", "3 more past the marker".
BOUNDING = _words(
    """before after past beyond per minus less except excluding but only if unless or either
    instead from"""
)

#: Colours that yarn is named by.
COLOURS = _words(
    """white black red orange yellow green blue purple pink brown grey gray cream mc cc beige
    ivory gold silver teal navy tan natural moss clay"""
)

#: Words that leave a beginning chain out of a count.
LEFT_OUT = _words("not never don't doesn't excluding without counting including incl included")

#: Words in a count's bracket that show it to be an aside or a measure.
NOT_COUNTED = _words(
    """cm mm inch inches m yd size sizes rows row rnds rnd rounds round times more time hook
    made counts count measures next each repeat rep around from to approx approximately side
    apart between distance visible"""
)

#: Words of a bracket such as "(7 sts apart)", and those that show it to tell a distance.
DISTANCE = _words("apart between distance visible")
OF_DISTANCE = DISTANCE | _words(
    """with leaving about approx approximately around space spaces in them the a of at each other
    from eyes st sts stitch stitches them both one two there are is sc . and"""
)

#: Signs round a figure that ends a line, and words that lead to the count of a round.
END_SIGNS = frozenset(",.:;->=/\"'\u2192\u2026~|")
GIVING = _list("making giving giving totalling totaling leaving resulting makes gives")

#: Words behind the figure of a count that only say that it is a total.
TOTAL = _words("total in all altogether stiches stitchs s . rem remaining now remain left on")

#: What stitches are worked along or round; those of them that are holes under chains.
HOLES = _words("ch chain chs handle handles loop opening strap")
PIECES = _words(
    """leg legs arm arms ear ears foot feet fluke flukes fin fins body head wing wings hand hands
    paw paws"""
)
#: What parts of a toy or an ornament are called, beside those pieces: they head its rounds.
NAMES = PIECES | _words(
    "ball eye nose muzzle snout beak horn petal leaf sepal stem piece part half tail sole shell"
)
THINGS = (
    HOLES
    | PIECES
    | _words(
        """layer layers edge side sides underside first second third other top bottom piece part
        round tail"""
    )
)

#: Where on a piece something is, as seen by who looks at it.
SIDES = _list(
    """back front center centre middle side sides top bottom left right underside neck tummy belly
    face chin"""
)

#: Words before "edge" for a side of a garment's piece: "at neck edge".
OF_EDGES = _list(
    """neck neckline armhole armholes arm front fronts back side sleeve shoulder raglan inner outer
    inside outside underarm left right center centre opening opposite other"""
)

#: Things made of several stitches, between which the gap is a place.
GROUPS = _words("fan fans shell shells group groups cluster clusters pair pairs petal petals")
#: Words for what is between stitches or groups, where no chain is.
GAP_WORDS = _list("gap gaps")

#: Things of which a round makes one in each place or each repeat; what is made of several
#: stitches in one way or another begins with one of the second words.
BUNCHES = _words(
    """petal petals shell shells fan fans scallop scallops group groups grouping groupings
    leaf leaves spike spikes ray rays tentacle tentacles curl curls tendril tendrils"""
)
SEVERAL = _list("group repeat petal fan section pair leaf leaves scallop")
#: Words behind them that change nothing.
OF_BUNCHES = _words(
    """made formed completed worked done in total all now around of each sts stitches st sc hdc
    dc tr htr dtr trs dcs s and"""
)

#: Words that old booklets shorten with a dot, besides the names of stitches.
SHORTENED = _words(
    """ch chs st sts sp sps lp lps ea rep rpt rnd rnds rd rds beg foll rem cont tog inc dec
    sl ss patt alt ins fin incl"""
)

#: Words behind "as" or "same as" that name no part of a piece.
NO_PARTS = _words(
    """again before above below established follows usual previous prev last this that these those
    other set directed written shown instructed pattern pat patt round rnd row rounds rnds
    rows way manner now well in it long needed desired normal usually always yet needed rest
    first second third st sts stitch stitches sc dc hdc tr ch chain inc dec sp color colour
    many much possible"""
)

#: Words that tell what is going to be done, and what may stand beside them.
ANNOUNCING = _words("start starting begin beginning time no going")
SAID_BEFORE = ANNOUNCING | _words(
    """now we you i will ll are is to let lets it the with here again next this our your more all
    same from on worked be done decreasing increasing decrease increase decreases increases
    shaping round rounds and way exactly"""
)

#: What the few stitches beside a chain are called, of which a piece grows from a corner.
TILES = _list("tile tiles block blocks box boxes square squares pixel pixels brick bricks")
WHICH_TILE = _list("the next first last same previous prev 1st row rows below from of in")

#: Pieces that motifs are joined to as they are made, and words on which of them.
OTHER_PIECES = _words(
    """motif motifs square squares hexagon hexagons block blocks flower flowers medallion
    medallions patch patches triangle triangles"""
)
WHICH_PIECE = _words(
    """previous prev adjacent neighboring neighbouring adjoining corresponding matching opposite
    other joined completed prior preceding first 1st another"""
)

#: Words that a slip is looked for in, beside the names of stitches.
MENDED = _list(
    """next each every around across in into from first last rep repeat times join ring magic turn
    hook skip sk same space sp sps st sts stitch stitches chain ch loop loops front back
    only both blo flo round rnd row with and then to end evenly increase decrease
    single half double treble crochet together tog slip invisible post remaining working
    fasten off begin beginning other side the of all until"""
)
#: Words that are none of these, and no slips either.
NO_SLIPS = _words("a as for more twice but once s t until")

# What the work itself says: lengths, pieces, steps, figures, history, errors.
# Project Fluent syntax. A sentence on a line of its own is a line of its own on the screen.

## Lengths, for the ear

spoken-inches = { $whole ->
    [one] { $whole } inch
   *[other] { $whole } inches
}
spoken-fraction = { $part } of an inch
spoken-inches-fraction = { $whole } and { $part } inches
spoken-part-2 = { $whole ->
    [0] half
   *[other] a half
}
spoken-part-4 = { $num ->
    [one] a quarter
   *[other] { $num } quarters
}
spoken-part-8 = { $num ->
    [one] an eighth
   *[other] { $num } eighths
}
spoken-part-16 = { $num ->
    [one] a sixteenth
   *[other] { $num } sixteenths
}
spoken-part-32 = { $num ->
    [one] one thirty-second
   *[other] { $num } thirty-seconds
}
spoken-part-64 = { $num ->
    [one] one sixty-fourth
   *[other] { $num } sixty-fourths
}
spoken-mm = { $number ->
    [1] 1 millimetre
   *[other] { $number } millimetres
}
spoken-cm = { $number ->
    [1] 1 centimetre
   *[other] { $number } centimetres
}
spoken-minus = minus { $length }
spoken-about = about { $length }
spoken-by = { $width } by { $height }
exact = just right
over = { $length } over
under = { $length } under
within-a-mark = right to the ruler’s mark
none = none
no-fringe = none; without a lining the edges show on the back, and fray there a little
number = { $n }
far-m = { $n } m
far-yd = { $n } yd
spoken-far-m = { $n } metres
spoken-far-yd = { $n } yards
of = { $done } of { $all }
minutes = { $n ->
    [one] { $n } minute
   *[other] { $n } minutes
}

## Pieces

grid = { $across } across × { $down } down
piece-square = Square { $at }
piece-pair = Pair { $first } + { $second }
piece-four = Four { $at }
piece-row = { $of ->
    [pairs] Row of pairs { $row }
   *[fours] Row of fours { $row }
}
piece-rows = { $n ->
    [2] Rows { $first } and { $last }
   *[other] Rows { $first } to { $last }
}
piece-column = { $of ->
    [pairs] Column of pairs { $column }
   *[fours] Column of fours { $column }
}
piece-columns = { $n ->
    [2] Columns { $first } and { $last }
   *[other] Columns { $first } to { $last }
}
piece-fours = { $n ->
    [2] Fours { $first } and { $last }
   *[other] Fours { $first } to { $last }
}
piece-part = Part { $first } to { $last }
piece-whole = The whole throw
spoken-place = row { $row }, place { $place }
spoken-square = Square in { $place }
spoken-pair = Pair: { $first } with { $second }
spoken-four = Four { $at }, from { $first } to { $last }
spoken-part = Joined part from { $first } to { $last }
kind-square = square
kind-pair = pair
kind-four = four
kind-row = row
kind-column = column
kind-part = larger part
kind-whole = whole
count-square = { $n ->
    [one] { $n } square
   *[other] { $n } squares
}
count-pair = { $n ->
    [one] { $n } pair
   *[other] { $n } pairs
}
count-four = { $n ->
    [one] { $n } four
   *[other] { $n } fours
}
count-row = { $n ->
    [one] { $n } join in the rows
   *[other] { $n } joins in the rows
}
count-column = { $n ->
    [one] { $n } join in the columns
   *[other] { $n } joins in the columns
}
count-part = { $n ->
    [one] { $n } larger join
   *[other] { $n } larger joins
}
count-whole = the whole throw

## Where in the work: the stages

path-stage-pile = Pile
path-stage-cut = Cut
path-stage-cover = Cover
path-stage-pairs = Pairs
path-stage-fours = Fours
path-stage-squared = Square up
path-stage-joined = Join
path-stage-bound = Bind
path-stage-washed = Wash
path-through = done
path-now = now
path-begun = begun
path-ahead = to come
path-count = { $done } of { $all }
path-steps = { $all ->
    [one] { $done } of one step
   *[other] { $done } of { $all } steps
}
path-pile = { $n ->
    [0] nothing listed
    [one] one entry
   *[other] { $n } entries
}
path-said = { $stage }: { $count }
path-place = Stage { $n } of { $all }
path-finished = Finished
path-left = about { $time } left
path-left-shortly = { $time } left
path-sheet = { $place }, { $said }; { $left }

## The step screen

progress = { $done } of { $all } steps done
station-any = Anywhere
station-table = Table
station-iron = Iron
station-machine = Machine
station-wash = Wash
station-spoken = { $n ->
    [0] { $station }, nothing ready
    [one] { $station }, one piece ready
   *[other] { $station }, { $n } pieces ready
}
rest-station = Nothing is ready at this place now ({ $station }). Look at another place, or at what is cooling.
rest-finished = Finished. By its plan and what was measured on the way the throw is { $size }; how much washing drew it in shows when you measure the whole. Well made.
rest-measured = { $n ->
    [0] Finished. The throw measures { $size }. Well made.
    [one] Finished. The throw measures { $size }, after one wash. Well made.
   *[other] Finished. The throw measures { $size }, after { $n } washes. Well made.
}
ask-faces = Which squares get fabric?
ask-faces-why = { $n ->
    [one] One fabric is listed, and no square has it yet. Lay out both faces before you join any squares: a joined square keeps its faces.
   *[other] { $n } fabrics are listed, and no square has one yet. Lay out both faces before you join any squares: a joined square keeps its faces.
}
ask-faces-denim = So far every square is { $denim }: under “Faces”, choose squares to make them another denim.
ask-faces-bare = All denim
noted-at = Written at { $piece }: { $text }
special-measure-first = Measure the whole throw first: only then can you tell later what washing did.
special-measure-unknown = It was not measured before washing. If you measure it now, you can tell what the next wash does.
special-spare = Nothing on the pile gives another square of { $denim }. Take a spare, or put more cloth on the pile.
special-no-spare = Nothing on the pile gives another square of { $denim }, and no spare is left. Put more cloth on the pile.
special-twin-out = Take out the twin needle first, and put in a single one: a twin needle cannot turn at corners.
how-binding-end = Lap the end over the beginning by { $over } or a little more, and cut off what is over.
special-trim-first = { $piece } is to be trimmed once more first, to { $target }: joined now, it stays at { $size }.
special-trim-again = It was squared up to { $size } before. Trim it once more, to { $target }.
special-left-out = Not ticked with the rest: { $names }. What its measures say has to be looked at first, one by one.
remain = { $done ->
    [0] { $left } to do
   *[other] { $left } to do, { $done } { $past }
}
remain-some-ready = { $left } to do, { $ready } ready now
tick-this = This one { $past }
tick-sitting = Lapped and pressed
tick-not-pressed = Lapped, not pressed yet
first-of = the first of { $n }
first-of-row = { $of ->
    [pairs] the first of { $n } in row { $row } of pairs
   *[fours] the first of { $n } in row { $row } of fours
}
tick-some = { $n ->
    [one] The other one { $past }
   *[other] These { $n } { $past }
}
tick-alike-denim = All { $n } from { $denim } cut
tick-alike = These { $n } { $past }
tick-alike-at = These { $n } at { $lap } { $past }
tick-all = { $n ->
    [2] Both { $past }
   *[other] All { $n } { $past }
}
tick-all-laps = All { $n } { $past } (laps differ)
tick-unmeasured = { $of ->
    [1] { $label } (not measured)
   *[other] { $n ->
        [one] { $label } (one not measured)
       *[other] { $label } ({ $n } not measured)
    }
}
tick-left-out = { $label }, without { $names }
names-and-more = { $n ->
    [one] { $names } and one more
   *[other] { $names } and { $n } more
}
tick-covered = { $fabrics ->
    [one] All { $n } glued
   *[other] All { $n } glued ({ $fabrics } fabrics)
}
tick-all-fabrics = { $fabrics ->
    [one] All { $n } glued
   *[other] All { $n } glued ({ $fabrics } fabrics)
}
tick-all-cut-fabrics = { $fabrics ->
    [one] All { $n } cut from one fabric
   *[other] All { $n } cut from { $fabrics } fabrics
}
tick-spare-other = { $n ->
    [one] Take the spare of { $denim }
   *[other] Take one of { $n } spares of { $denim }
}
tick-spare = { $n ->
    [one] Take the spare square
   *[other] Take one of { $n } spare squares
}

title-cut = Cut a square
title-lap-halves = Lap and glue two halves
title-press-halves = Press the halves’ lap
title-cool-halves = Let the halves’ lap cool
title-stitch-halves = Stitch two halves into a square
title-cut-fabric = Cut the fabric squares
title-cover-front = Glue fabric on the front
title-cover-back = Glue fabric on the back
title-press-cover = Press the glued square
title-cool-cover = Let the square cool
title-stitch-patch = Stitch round the patch
title-dot = { $kind ->
    [pair] Lap and glue a pair
    [four] Lap two pairs into a four
   *[other] Lap the next join
}
title-press-lap = { $kind ->
    [pair] Press the pair
    [four] Press the four’s lap
   *[other] Press the lap
}
title-cool-lap = Let the lap cool
title-pin = { $kind ->
    [pair] Pin a pair
    [four] Pin two pairs into a four
   *[other] Pin the next join
}
title-stitch = { $kind ->
    [pair] Stitch the pair
    [four] Stitch the four
   *[other] Stitch the join
}
title-press-seam = Press the seam
title-press-block = Press it flat
title-square-up = Square it up
title-trim-edge = Press and trim the whole edge
title-cut-binding = Cut the binding strips
title-join-binding = Join the strips into one
title-press-binding = Fold and press the strip
title-glue-binding = Fold the binding over the edge
title-stitch-binding = Stitch the binding down
title-snip = Snip the seam allowances
title-wash = Wash { $n } of { $all }
title-clip = Clip the threads after wash { $n } of { $all }

how-cut = Cut a strip as wide as the square across the leg, then cut the square from it.
    Keep off the outseam ridge, hems, worn knees and holes, and keep the edge on the grain.
how-lap-halves = This square is pieced of two halves of one denim, with the grain running the same way in both.
    Mark the lap along a long edge of one half; it lies underneath.
    Put small dots of washable glue inside the mark and lay the other half over it, both right side up and their ends even. Together they are as wide as a square.
how-press-halves = Lay the pressing cloth on the lap and press it to set the glue: set the iron down and lift it again, and do not slide it. Keep the halves in line.
how-cool-halves = Leave it flat until it is cool to the touch. If it is lifted warm, the glue lets go.
how-stitch-halves = Stitch down the middle of the lap; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the needle.
    Stitch length { $long }; three or four stitches back at both ends secure it.
    From here on it is a square like any other; along its middle it has two layers of denim, so go slowly later where that meets a lap.
how-stitch-halves-rows = Stitch two rows, one after the other, in the same direction: the first { $first } from the raw edge on top, the second { $second } from it.
    Stitch length { $long }; three or four stitches back at both ends of each row secure it.
    From here on it is a square like any other; along its middle it has two layers of denim, so go slowly later where that meets a lap.
how-stitch-halves-zigzag = Stitch so that the middle of the zigzag runs down the middle of the lap; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the middle of the zigzag.
    Stitch length { $long }; three or four stitches back at both ends secure it.
    From here on it is a square like any other; along its middle it has two layers of denim, so go slowly later where that meets a lap.
how-stitch-halves-twin = Stitch down the middle of the lap; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the middle of the two needles.
    Stitch length { $long }. Leave the thread ends long, draw them through to one side and tie them: a twin needle should not sew backwards.
    From here on it is a square like any other; along its middle it has two layers of denim, so go slowly later where that meets a lap.
how-cut-fabric = Trim the fabric’s edges straight first, off the selvedges a little more. Then cut the squares as large as the denim squares.
how-cut-fabric-laid-on = Trim the fabric’s edges straight first, off the selvedges a little more. Then cut the piece { $side }: the square is sewn in, and the piece lies clear of its laps.
how-cover-front = Put a few dots of washable glue on the wrong side of the fabric square, well inside its edge.
    Lay it on the front, right side up, edges even.
how-cover-back = Turn the square over. Put a few dots of washable glue on the wrong side of the fabric square, well inside its edge.
    Lay it on the back, right side up, edges even.
how-cover-front-patch = Put a few dots of washable glue on the wrong side of the patch, well inside its edge.
    Lay it in the middle of the front, right side up: { $round } of denim shows all round, so that no lap catches it.
how-cover-back-patch = Turn the square over. Put a few dots of washable glue on the wrong side of the patch, well inside its edge.
    Lay it in the middle of the back, right side up: { $round } of denim shows all round, so that no lap catches it.
how-cover-front-laid-on = Trim the fabric to { $side }. Put a few dots of washable glue on the wrong side of the fabric, well inside its edge.
    Lay it in the middle of the square, on the front, right side up, clear of every lap.
how-cover-back-laid-on = Trim the fabric to { $side }. Turn the work over. Put a few dots of washable glue on the wrong side of the fabric, well inside its edge.
    Lay it in the middle of the square, on the back, right side up, clear of every lap.
how-press-cover = Lay the pressing cloth on it. Set the iron down and lift it again; do not slide it.
how-cool-cover = Leave it flat until it is cool to the touch. If it is lifted warm, the glue lets go.
how-stitch-patch = Stitch the fabric down on all four sides, { $edge } inside its edge: no lap holds it here, and washable glue comes out in the first wash.
    The stitching shows on the other face too.
how-stitch-patch-twin = Put a single needle in: a twin needle cannot turn a corner.
    Stitch the fabric down on all four sides, { $edge } inside its edge: no lap holds it here, and washable glue comes out in the first wash.
    The stitching shows on the other face too.
how-dot = Mark the lap along the edge of the right or lower piece, which lies underneath.
    Put small dots of washable glue inside the mark and lay the left or upper piece over it.
how-dot-at = Mark { $lap } along the { $side ->
        [left] left
       *[upper] upper
    } edge of { $under }, which lies underneath{ $named ->
        [0] .
       *[other] ; only where another lap is named here, mark that.
    }
    Put small dots of washable glue inside the mark and lay { $over } over it.
how-line-up = { $n ->
    [0] Bring the ends level.
    [one] Bring the two { $joining ->
        [lapped] laps
       *[other] seams
    } that meet in the middle into one line first, then the ends level.
   *[other] Bring the { $joining ->
        [lapped] laps
       *[other] seams
    } that meet into one line, from the middle outwards, then the ends level.
}
how-line-up-uneven = { $piece } is { $by } longer. Bring the two { $joining ->
        [lapped] laps
       *[other] seams
    } that meet in the middle into one line, and leave the ends as they come: squaring up evens them.
how-line-up-longer = { $piece } is { $by } longer. Bring the { $joining ->
        [lapped] laps
       *[other] seams
    } that meet into one line{ $n ->
        [one] { "" }
       *[other] , from the middle outwards
    }, and leave the ends as they come.
how-press-lap = Lay the pressing cloth on the lap and press it to set the glue: set the iron down and lift it again, and do not slide it. Keep the squares in line.
sitting-cool = Leave it where it was pressed until it is cool to the touch: if it is lifted warm, the glue lets go. Lap the next beside it. You need not tick it off: once it is cool, it is ready to stitch.
special-mixed = Each square of this fabric is different: pick one that is not like those round it.
special-short-by-laps = { $joining ->
    [lapped] By its laps it comes out at { $size }, smaller than { $target }, and trimming adds nothing: measure it, and see what can be done.
   *[other] By its allowances it comes out at { $size }, smaller than { $target }, and trimming adds nothing: measure it, and see what can be done.
}
special-scrap-first = Sew a test scrap first, with this { $joining ->
        [lapped] lap
       *[other] seam
    }, needle and thread: see “Plan”, “Test scraps”.
special-lay-first = Before the first { $joining ->
        [lapped] lap
       *[other] seam
    }, lay all squares out on the floor, label each, and stack them row by row.{ $cooling ->
        [0] { "" }
       *[other] { " " }Leave what is cooling where it lies until it is cool.
    }
how-cool-lap = Leave it flat until it is cool to the touch. If it is lifted warm, the glue lets go.
how-pin = Lay the two with their fronts together, edges even, and pin across the edge.
how-pin-exposed = Lay the two with their backs together, edges even, and pin across the edge. The raw edges will show.
how-stitch-twin = Stitch down the middle of the lap, the same side up every time; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the middle of the two needles.
    Stitch length { $long }. Leave the thread ends long, draw them through to one side and tie them: a twin needle should not sew backwards.
    Go slowly where laps cross; turn the wheel by hand over the thickest places.
how-stitch-lap = Stitch down the middle of the lap; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the needle.
    Stitch length { $long }; three or four stitches back at both ends secure it.
    Go slowly where laps cross; turn the wheel by hand over the thickest places.
how-stitch-lap-zigzag = Stitch so that the middle of the zigzag runs down the middle of the lap; let the edge of the presser foot or a guide run along the raw edge, { $middle } from the middle of the zigzag.
    Stitch length { $long }; three or four stitches back at both ends secure it.
    Go slowly where laps cross; turn the wheel by hand over the thickest places.
how-stitch-rows = Stitch two rows, one after the other, the same side up and in the same direction: the first { $first } from the raw edge on top, the second { $second } from it.
    For the first, let the edge of the presser foot or a guide run along that raw edge, { $first } from the needle. For the second, let it run along the first row, { $between } from the needle.
    Stitch length { $long }; three or four stitches back at both ends of each row secure it.
    Go slowly where laps cross; turn the wheel by hand over the thickest places.
how-stitch-seam-rows = Stitch two rows, one after the other: the first { $second } from the raw edges, the second { $first } from them; the mark on the needle plate or a guide keeps them even.
    Take the pins out as you come to them.
    Stitch length { $long }; three or four stitches back at both ends of each row.
how-stitch-seam = Stitch one allowance in from the raw edges; the mark on the needle plate or a guide keeps it even.
    Take the pins out as you come to them.
    Stitch length { $long }; three or four stitches back at both ends.
how-stitch-seam-wide = Stitch so that the middle of the stitching runs one allowance in from the raw edges; the mark on the needle plate is for a needle in the middle, and it or a guide keeps the distance even.
    Take the pins out as you come to them.
    Stitch length { $long }; three or four stitches back at both ends.
how-stitch-seam-twin = Stitch so that the middle of the two rows runs one allowance in from the raw edges; the mark on the needle plate is for a needle in the middle, and it or a guide keeps the distance even.
    Take the pins out as you come to them.
    Stitch length { $long }. Leave the thread ends long, draw them through to one side and tie them: a twin needle should not sew backwards.
needle-single = Needle: a jeans needle, system 130/705 H, size 90/14 to 100/16. This is common practice; your machine’s manual decides.
needle-twin = Needle: a twin needle { $spacing } apart, system 130/705 H: one for jeans if it is made with this spacing (usually 4 mm, size 100), else the thickest that is. This is common practice; your machine’s manual decides.
how-press-seam = Press the seam flat as it was sewn, then open.
    Or press it to one side: stronger, but three layers thick, and about six at a crossing; then turn the next seam the other way.
how-press-seam-wide = Press the seam flat as it was sewn, then to one side: between its rows it stays closed and cannot be pressed open.
    It is three layers thick there, and about six at a crossing; turn the next seam the other way.
how-press-seam-exposed = Press the seam open, so that both allowances stand free to be snipped and to fray.
how-press-block = Press it flat from both sides and let it lie until cool before measuring.
how-square-up = Trim what is over, half from each side, so that the crossing stays in the middle.
how-square-up-leans = It leans. Before you cut, pull it gently along its short diagonal, steam it flat (the iron and its steam burn: keep your hand clear), let it cool, and measure again. What still leans then is cut as it is given here.
how-square-up-outline = Take off each side what is given for it here, and no more: it is not quite square, so its sides differ.
how-square-up-measure = Measure it first: denim stretches at the end of a seam.
    Trim what is over, half from each side. Most need no trimming.
how-cut-binding = Cut all strips alike, exactly to this length, with straight sides and square ends: the places of their joins are planned by it.
how-join-binding = Lay the end of one strip over the beginning of the next, as wide as the lap, and stitch across. Go on until all are one long strip.
how-join-binding-seam = Lay the ends of two strips right sides together, stitch across, and press the seam open (the iron and its steam burn: keep your fingers clear). Go on until all are one long strip.
how-press-binding = Fold the strip in half lengthwise, raw edges even, and press a sharp crease.
how-trim-edge = Press the whole edge from both sides and let it cool. Put the iron aside: the edge is cut cold.
    Lay a long ruler along the whole side, over the ends of the joins, and see that the corners are square.
    Then trim off only what stands out, so that every side is one straight line. Take off no more than the side needs; often it is a few threads or nothing. What you cut here is missing from the finished size.
how-glue-binding = Lay the throw with its front up. Begin at the place given here, and go round clockwise.
    Push the edge of the throw into the fold, right to the crease. Hold it there with dots of washable glue and with clips. Take each clip off before the iron comes near, press, and let it cool. On each face a little less than half of the strip shows: the edge takes up the rest.
    Fold the strip at each corner as its pictures show. At the end lap it over its beginning; never over a crossing.
how-glue-binding-untrimmed = Before you bind, press the whole edge and let it cool. Put the iron aside, then trim the edge straight and even.
    Lay the throw with its front up. Begin at the place given here, and go round clockwise.
    Push the edge of the throw into the fold, right to the crease. Hold it there with dots of washable glue and with clips. Take each clip off before the iron comes near, press, and let it cool. On each face a little less than half of the strip shows: the edge takes up the rest.
    Fold the strip at each corner as its pictures show. At the end lap it over its beginning; never over a crossing.
how-stitch-binding = First put in a new, single jeans needle of size 100/16, if your machine’s manual allows it: the stitching goes through three layers of denim, the two of the strip and the throw, and through more where squares and where strips are joined.
    Stitch one row all round, through all layers, { $edge } from the raw edge of the strip. Go slowly at the corners and where the joins of the squares meet the edge, and turn the wheel by hand over the thickest places.
corner-1 = Hold the folded strip on the first edge as far as the corner. The rest is still free.
corner-2 = Turn the free strip round the corner, its crease along the next edge. What is over stands out at the corner.
corner-3 = Lay what is over into a slanting fold, from the outer corner to the inner one; on the back lay it the other way. A dot of glue, and press.
corner-4 = Stitch as far as the inner corner and stop with the needle down. Lift the foot, turn the throw, put the foot down and go on.
binding-shows = Of the { $strip } strip { $plain } shows on each face, a little less than half: the edge takes up the rest. Where squares are joined and where the strip laps over itself it is a little less still.
how-snip = Snip both allowances of every seam straight towards the stitching, about every { $apart }; stop short of the thread.
    Only snipped edges fray into a fringe when washed.
how-wash = Wash it by itself or in a laundry bag. Shake it out well, then dry.
    Clean the lint filter before and after.
how-clip = Clip the long loose threads on both sides. Leave the short fringe.

bound-clear = The joins of the strip then come where it says here, each { $clear } or more from the joins of the squares and from the corners.
bound-clear-past = { $told } { $n ->
    [one] The last join comes after that, in the tail past the beginning; no place is told for it.
   *[other] The last { $n } joins come after that, in the tail past the beginning; no places are told for them.
}
bound-on-lap = Wherever the binding begins, one of its joins comes on a join of the squares or on a corner. It is thick there: turn the wheel by hand over it.
special-old-lap = It was lapped at { $was }; the plan has { $lap } now. While only glue holds it, it can be lapped again: see “This one is off”.
special-opened = This join was unpicked: only { $length } of it is to be sewn again.
special-unbound = Only where the binding was opened: the rest of it stays on.
special-lap = { $joining ->
    [lapped] Where { $a } meets { $b }, lap only { $lap }.
   *[other] Where { $a } meets { $b }, the allowance is only { $lap }.
}
special-ends = { $piece } is { $short } short along this edge: lay it so that it stands back from the line of the rest by { $ends }.
special-edge-trim-edge = { $piece } stands back from the edge by { $ends }. The binding hides that: trim nothing to it.
special-edge-glue-binding = { $piece } stands back from the edge by { $ends }: there it does not reach the crease of the strip. Go on in the line of the rest.
end-top = { $by } at the top
end-right = { $by } at the right
end-bottom = { $by } at the bottom
end-left = { $by } at the left
special-lap-middle = There the middle of the stitching runs { $middle } from the raw edge on top, with { $fringe } of fringe each side.
special-lap-rows = There the rows run { $first } and { $second } from the raw edge on top, with { $fringe } of fringe each side.

tick-cut = Cut
tick-lap-halves = Lapped and glued
tick-press-halves = Pressed
tick-cool-halves = It is cool
tick-stitch-halves = Stitched
tick-cut-fabric = Cut
tick-cover-front = Glued
tick-cover-back = Glued
tick-press-cover = Pressed
tick-cool-cover = It is cool
tick-stitch-patch = Stitched round
tick-dot = Lapped and glued
tick-press-lap = Pressed
tick-cool-lap = It is cool
tick-pin = Pinned
tick-stitch = Stitched
tick-stitch-rows = Both rows stitched
tick-press-seam = Pressed
tick-press-block = Pressed flat
tick-square-up = Squared up
tick-trim-edge = Pressed and trimmed
tick-cut-binding = Strips cut
tick-join-binding = Strips joined
tick-press-binding = Folded and pressed
tick-glue-binding = Folded over and held
tick-stitch-binding = Stitched down
tick-snip = Snipped
tick-wash = Washed and dried
tick-clip = Threads clipped

past-cut = cut
past-lap-halves = lapped and glued
past-press-halves = pressed
past-cool-halves = cooled
past-stitch-halves = stitched
past-cut-fabric = cut from fabric
past-cover-front = glued on the front
past-cover-back = glued on the back
past-press-cover = pressed
past-cool-cover = cooled
past-stitch-patch = stitched round
past-dot = lapped and glued
past-lap-and-press = lapped and pressed
past-not-pressed = lapped, not pressed yet
past-press-lap = pressed
past-cool-lap = cooled
past-pin = pinned
past-stitch = stitched
past-stitch-rows = stitched, both rows
past-press-seam = pressed
past-press-block = pressed flat
past-square-up = squared up
past-trim-edge = edge pressed and trimmed
past-cut-binding = strips cut
past-join-binding = strips joined
past-press-binding = binding folded and pressed
past-glue-binding = binding folded over and held
past-stitch-binding = binding stitched
past-snip = allowances snipped
past-wash = washed
past-clip = threads clipped

task-cut = cut
task-lap-halves = lap and glue the halves
task-press-halves = press the halves’ lap
task-cool-halves = let the halves’ lap cool
task-stitch-halves = stitch the halves
task-cut-fabric = cut the fabric squares
task-cover-front = glue fabric on the front
task-cover-back = glue fabric on the back
task-press-cover = press the glued square
task-cool-cover = let the covered square cool
task-stitch-patch = stitch round the patch
task-dot = lap and glue
task-press-lap = press the lap
task-cool-lap = let the lap cool
task-pin = pin
task-stitch = stitch
task-press-seam = press the seam
task-press-block = press flat
task-square-up = square up
task-trim-edge = press and trim the whole edge
task-cut-binding = cut the binding strips
task-join-binding = join the binding strips
task-press-binding = fold and press the binding
task-glue-binding = fold the binding over the edge
task-stitch-binding = stitch the binding
task-snip = snip the seam allowances
task-wash = wash
task-clip = clip the threads

## Cautions

caution-blade-title = Sharp blade
caution-blade = Close the cutter’s guard every time you put it down. Cut away from your body, and keep the hand that holds the ruler clear of the edge. Follow the cutter’s own instructions.
caution-iron-title = Hot iron
caution-iron = The soleplate and the steam burn, also the steam that comes out of damp glue. Stand the iron up when you let go of it and keep the cord out of the way. Follow the iron’s and the glue’s own instructions.
caution-blade-and-iron-title = Hot iron, sharp blade
caution-blade-and-iron = First the iron: the soleplate and the steam burn. Stand it up when you let go of it, keep the cord out of the way, and put it aside before you cut. Then the cutter: close its guard every time you put it down, cut away from your body, and keep the hand that holds the ruler clear of the edge. Follow the instructions of both.
caution-needle-title = Needle
caution-needle = Rivets, zips and pins break needles: take rivets and zips out first, and each pin before the foot reaches it. Wear eye protection over thick crossings and turn the wheel by hand there. { $stitch ->
    [twin] A twin needle strikes the plate if the stitch is set wider than the plate’s opening less the needle spacing: set a straight stitch, needle in the middle, and turn the wheel by hand once round before you start. A straight-stitch plate, with one round hole, takes neither a twin needle nor a zigzag.
    [zigzag] A straight-stitch plate, with one round hole, takes no zigzag: put in the plate and the foot with the wide opening, and turn the wheel by hand through one whole zigzag before you start.
   *[straight] Set a straight stitch, needle in the middle: on a straight-stitch plate, with one round hole, a needle set to one side strikes it. Turn the wheel by hand once round before you start.
} The machine’s manual decides.
caution-lint-title = Lint burns
caution-lint = Raw edges shed a lot of lint. Clean the dryer’s lint filter before and after each load, and do not leave the dryer running alone. Follow the machine’s manual.
caution-children-title = Small children
caution-children = Long fringe and loose parts are not for a baby’s cot. If you give the throw to a child or sell it, the product safety rules where you live decide.

## Figures

figure-square = Cut square
figure-fabric = Fabric
figure-from-denim = From
figure-cooling = Cool for about
figure-lap = Lap
figure-allowance = Seam allowance
figure-seam = Seam length
figure-again = To make again
figure-middle = Stitching from the raw edge
figure-row-first = First row, from the edge on top
figure-row-second = Second row, from the edge on top
figure-rows-apart = From row to row
figure-twin = Needle spacing
figure-stitch-length = Stitch length
figure-stitch-width = Stitch width
figure-fringe = Fringe each side
figure-fringe-between = Fringe each side, between fours
figure-trim-to = Trim to
figure-measured = Measured
figure-across = Across
figure-down = Down
figure-should-be = Should measure
figure-strips = Strips
figure-strip = Strip width
figure-longest = Each as long as
figure-folded = Folded, it is as wide as
figure-begin-top = Begin: top, from left
figure-begin-right = Begin: right, from top
figure-begin-bottom = Begin: bottom, from right
figure-begin-left = Begin: left, from bottom
figure-join-top = Joins: top, from left
figure-join-right = Joins: right, from top
figure-join-bottom = Joins: bottom, from right
figure-join-left = Joins: left, from bottom
figure-joins = Joins
figure-each-face = Shows on each face
figure-from-raw-edge = From the raw edge of the strip
figure-from-fold = From the fold
figure-binding = Binding
figure-joined = Joined, it is at least
figure-round = All the way round
figure-finished = Finished size
figure-finished-sewn = Finished size, with what is already sewn
figure-squares = Squares
figure-pair = Pair
figure-four = Four
figure-pair-to-sew = Pair still to sew
figure-four-to-sew = Four still to sew
figure-blocks = Made up of
figure-seams = Stitching
figure-layers = Layers of cloth
figure-layers-denim = Layers of denim, without fabric
figure-off-across = Across
figure-off-down = Down
figure-lap-sewn-across = Lap sewn across, stretch included
figure-lap-sewn-down = Lap sewn down, stretch included
figure-allowance-sewn-across = Allowance sewn across, stretch included
figure-allowance-sewn-down = Allowance sewn down, stretch included
figure-mean = Average side
figure-spread = Shortest to longest side
figure-mean-lap = Average lap sewn
figure-mean-allowance = Average allowance sewn
lap-sewn = { $lap } (planned { $meant })
strips = { $n ->
    [one] { $n } strip
   *[other] { $n } strips
}
blocks = { $fours ->
    [0] { "" }
    [one] { $fours } four
   *[other] { $fours } fours
}{ $pairs ->
    [0] { "" }
   *[other] { $fours ->
        [0] { "" }
       *[other] , { "" }
    }
}{ $pairs ->
    [0] { "" }
    [one] { $pairs } single pair
   *[other] { $pairs } single pairs
}{ $squares ->
    [0] { "" }
   *[other] { $pairs ->
        [0] { $fours ->
            [0] { "" }
           *[other] , { "" }
        }
       *[other] , { "" }
    }
}{ $squares ->
    [0] { "" }
    [one] { $squares } single square
   *[other] { $squares } single squares
}
seams = { $n ->
    [one] { $n } seam, { $length }
   *[other] { $n } seams, { $length } in all
}
seams-twice = { $n ->
    [one] { $n } seam, { $length }, stitched twice
   *[other] { $n } seams, { $length } in all, each stitched twice
}
layers = { $crossing ->
    [0] up to { $lap } where two squares meet
   *[other] up to { $lap } where two squares meet, { $crossing } where four corners meet
}
layers-seamed = { $crossing ->
    [0] up to { $lap } where two squares meet; pressed to one side about half as many again
   *[other] up to { $lap } where two squares meet, { $crossing } where four corners meet; pressed to one side about half as many again
}
binding = { $n ->
    [one] { $length } in { $n } strip
   *[other] { $length } in { $n } strips
}

## Faces

bare = bare denim
cell = { $piece }: { $cloth }
cell-stays = { $piece }: { $cloth }, stays as it is
cell-pinned = { $piece }: { $cloth }, kept in its place
bare-wrong-side = bare denim, wrong side
face-front = Front
face-back = Back, as you see it turned over
face-covered = { $n } of { $all } squares covered on this face.
face-both = { $n ->
    [0] None is covered on both faces.
    [one] One square is covered on both faces.
   *[other] { $n } squares are covered on both faces.
}
face-pieced = { $n ->
    [one] One square is pieced of two halves (½).
   *[other] { $n } squares are pieced of two halves (½).
}
face-laid-on = On a square that is sewn in already, fabric is laid on: trimmed to { $side }, so that it lies clear of the laps, glued in the middle and stitched round. The stitching shows on the other face too.
face-patches = { $n ->
    [one] One fabric is a patch in the middle of its square.
   *[other] { $n } fabrics are patches in the middle of their squares.
}
face-layers = { $crossing ->
    [0] The thickest join has { $lap } layers.
   *[other] The thickest join has { $lap } layers, the thickest crossing { $crossing }.
}
face-spoken = { $title }: { $across } across, { $down } down, { $n } covered with fabric
print-used = { $used } used
print-spoilt = { $n } spoilt
print-aside = { $n } set aside
print-mixed = each square different
print-patches = patches of { $side }, { $round } of denim round each
print-left = { $n } left
print-short = { $n } short
print-of = { $used } of { $stock } used

## Bench

stage-open = not cut
stage-cut = cut, not ready
stage-ready = ready to join
stage-held = held together, not stitched
stage-paired = in a pair
stage-blocked = in a four
stage-squared = squared up
stage-joined = joined to the rest
tally-cut = Squares cut
tally-fabric = Fabric squares cut
tally-front = Fabric on the front
tally-back = Fabric on the back
tally-pairs = Pairs stitched
tally-fours = Fours stitched
tally-squared = Squared up
tally-larger = Larger joins
losses-none = No square spoilt so far.
losses = Spoilt so far: { $list }.
mishap-mis-cut = cut wrong
mishap-flaw = hole, stain or worn patch
mishap-scorched = scorched
mishap-lost = lost
line-done = Done: { $task }
line-next = Next: { $task }
line-waits = Waits for { $part }
line-complete = All its steps are done
line-measured = Measured { $size }
line-squared = Squared up to { $size }
line-note = Note: { $text }

## Measuring

measure-keep = Keep this measure
verdict-across-exact = Across: just right.
verdict-across-over = Across: { $over } over. Trim { $before } from the left and { $after } from the right; { $even ->
    [yes] the crossing stays in the middle.
   *[no] the crossing stays as near the middle as the ruler shows.
}
verdict-across-over-rest = Across: { $over } over. Trim { $before } from the left and the rest, { $after }, from the right; { $even ->
    [yes] the crossing stays in the middle.
   *[no] the crossing stays as near the middle as the ruler shows.
}
verdict-across-over-one-side = Across: { $over } over, less than can be halved on this ruler. Trim it from the right.
verdict-across-under = Across: { $over } under. Do not trim left or right.
verdict-across-thin = At the width measured its lap is only { $lap }, with { $fringe } of fringe each side; { $least } is the least. Cloth that has stretched would measure the same: look at the lap itself. If it is that narrow, do not trim: see “This one is off”.
verdict-down-exact = Down: just right.
verdict-down-over = Down: { $over } over. Trim { $before } from the top and { $after } from the bottom; { $even ->
    [yes] the crossing stays in the middle.
   *[no] the crossing stays as near the middle as the ruler shows.
}
verdict-down-over-rest = Down: { $over } over. Trim { $before } from the top and the rest, { $after }, from the bottom; { $even ->
    [yes] the crossing stays in the middle.
   *[no] the crossing stays as near the middle as the ruler shows.
}
verdict-down-over-one-side = Down: { $over } over, less than can be halved on this ruler. Trim it from the bottom.
verdict-down-under = Down: { $over } under. Do not trim top or bottom.
verdict-down-thin = At the height measured its lap is only { $lap }, with { $fringe } of fringe each side; { $least } is the least. Cloth that has stretched would measure the same: look at the lap itself. If it is that narrow, do not trim: see “This one is off”.
short-edge-top = Short { $by } at the top; the binding hides it. There is nothing more to do there.
short-edge-right = Short { $by } at the right; the binding hides it. There is nothing more to do there.
short-edge-bottom = Short { $by } at the bottom; the binding hides it. There is nothing more to do there.
short-edge-left = Short { $by } at the left; the binding hides it. There is nothing more to do there.
short-join-top = { $joining ->
    [lapped] Join its top to { $piece } with a lap of only { $lap }: that makes up for { $by }.
   *[other] Join its top to { $piece } with an allowance of only { $lap }: that makes up for { $by }.
}
short-join-right = { $joining ->
    [lapped] Join its right side to { $piece } with a lap of only { $lap }: that makes up for { $by }.
   *[other] Join its right side to { $piece } with an allowance of only { $lap }: that makes up for { $by }.
}
short-join-bottom = { $joining ->
    [lapped] Join its bottom to { $piece } with a lap of only { $lap }: that makes up for { $by }.
   *[other] Join its bottom to { $piece } with an allowance of only { $lap }: that makes up for { $by }.
}
short-join-left = { $joining ->
    [lapped] Join its left side to { $piece } with a lap of only { $lap }: that makes up for { $by }.
   *[other] Join its left side to { $piece } with an allowance of only { $lap }: that makes up for { $by }.
}
short-open = { $way ->
    [across] Across
   *[down] Down
}: nothing makes up for { $part ->
    [rest] the other { $by }
   *[all] the missing { $by }
} yet. See “This one is off” before you go on.
short-open-keep = { $way ->
    [across] Across
   *[down] Down
}: nothing makes up for { $part ->
    [rest] the other { $by }
   *[all] the missing { $by }
} yet. Keep this measure, then see what can be done.
short-open-kept = { $way ->
    [across] Across
   *[down] Down
}: nothing makes up for { $part ->
    [rest] the other { $by }
   *[all] the missing { $by }
} yet. See what can be done.
short-left = { $way ->
    [across] Across
   *[down] Down
}: nothing makes up for { $part ->
    [rest] the other { $by }
   *[all] the missing { $by }
} yet.
short-eased = { $joining ->
    [lapped] { $by } short is within the give of the cloth: hold the edges together as you lap them, and it eases in.
   *[other] { $by } short is within the give of the cloth: pin the ends first, then the edges between, and it eases in.
}
short-eased-little = { $joining ->
    [lapped] It is a very little short, which is within the give of the cloth: hold the edges together as you lap them, and it eases in.
   *[other] It is a very little short, which is within the give of the cloth: pin the ends first, then the edges between, and it eases in.
}
short-settled = It may be squared up and sewn as it is.
summary-none = No four measured yet.
summary-none-straight = { $n ->
    [one] The only four measured leaned, so nothing can be told from it yet.
   *[other] All { $n } fours measured leaned, so nothing can be told from them yet.
}
summary-leaning = { $n ->
    [one] One more leaned when it was measured, so it is left out.
   *[other] { $n } more leaned when they were measured, so they are left out.
}
drift-too-few = { $n ->
    [one] One four measured: too few to tell a habit from chance. Width and height together, it is { $mean }.
   *[other] { $n } fours measured: too few to tell a habit from chance. Width and height together, on average { $mean }.
}
drift-as-planned = { $n } fours measured. They come out as planned; on average { $mean }.
drift-scattered = { $n } fours measured. On average { $mean }, but they differ: from { $least } to { $most }. Measure every one before you trim it, and look at how the squares were cut and lapped.
drift-guess = { $n } fours measured: { $mean } on average so far. Too few to change the lap by: measure five or more.
drift-narrow = { $n } fours measured. They are all too large by about the same: { $joining ->
    [lapped] the lap is
   *[other] the allowance is
} being sewn { $by } narrower than marked.
drift-wide = { $n } fours measured. They are all too small by about the same: { $joining ->
    [lapped] the lap is
   *[other] the allowance is
} being sewn { $by } wider than marked.
drift-stretch-across = { $n } fours measured. They are too wide, but not too high: the cloth stretches across (on average { $mean }).
drift-stretch-down = { $n } fours measured. They are too high, but not too wide: the cloth stretches down (on average { $mean }).
drift-stretch-both = { $n } fours measured. They are too large, but not all alike: the cloth stretches (on average { $mean }).
drift-uneven = { $n } fours measured. They differ, but not from stretch or one wrong lap (on average { $mean }). Look at how the squares were cut.
drift-growing = { $n } fours measured. On average each is { $by } larger than the one before: the mark or the guide is moving.
drift-shrinking = { $n } fours measured. On average each is { $by } smaller than the one before: the mark or the guide is moving.
drift-mark-wider = { $joining ->
    [lapped] Mark the next laps { $by } wider.
   *[other] Sew the next seams with an allowance { $by } wider.
}
drift-mark-narrower = { $joining ->
    [lapped] Mark the next laps { $by } narrower.
   *[other] Sew the next seams with an allowance { $by } narrower.
}
sure-guess = With so few this is a guess.
sure-likely = With so many this is likely.
sure-firm = With so many this is fairly sure.
figure-skew = Corner off square
figure-holds = Largest size it holds
figure-trim-top = Trim from the top
figure-trim-right = Trim from the right
figure-trim-bottom = Trim from the bottom
figure-trim-left = Trim from the left
skew = { $degrees }°
skew-none = square
wedge = { $from } to { $to }
trim-by-marks = Mark at both ends of each side what is to be trimmed there, lay the ruler along the two marks, and cut.
pull-falling = It leans: from the top left to the bottom right it is { $by } shorter than the other way. Before you cut, pull it gently along that short diagonal, steam it flat (the iron and its steam burn: keep your hand clear), let it cool, and measure again.
pull-rising = It leans: from the top right to the bottom left it is { $by } shorter than the other way. Before you cut, pull it gently along that short diagonal, steam it flat (the iron and its steam burn: keep your hand clear), let it cool, and measure again.
pulled-still = It still leans after it was pulled square. If it cannot be pulled further, cut it as shown here.
pull-square = It leans. Before you cut, pull it gently along its short diagonal, steam it flat (the iron and its steam burn: keep your hand clear), let it cool, and measure again.
outline-short = It is too small for { $target }; the largest size it holds is { $held }.
outline-holds = It holds { $target }.
nothing = nothing
wedge-out = { $from }, running out to nothing
wedge-in = from nothing to { $to }
outline-top = the top side
outline-right = the right side
outline-bottom = the bottom side
outline-left = the left side
outline-falling = the diagonal from top left to bottom right
outline-rising = the diagonal from top right to bottom left
picture-outline = { $piece }, its true outline and where to cut
trim-none-short = No measured piece falls short.
trim-short = { $n ->
    [one] One measured piece falls short.
   *[other] { $n } measured pieces fall short.
}
trim-waste = On average { $waste } comes off a side.
trim-waste-none = Hardly anything comes off a side.
trim-choose = Trim to { $size }
save-lap = { $joining ->
    [lapped] where it meets { $piece } lap { $lap }
   *[other] where it meets { $piece } an allowance of { $lap }
}
save-across-lapped = { $piece } is { $short } short across: { $laps }.
save-down-lapped = { $piece } is { $short } short down: { $laps }.
save-over = The ruler has no mark in between: the row or column becomes { $over } too long, which eases in at the joins.
save-across-eased = { $joining ->
    [lapped] { $piece } is { $short } short across, which eases in: hold the edges together as you lap them.
   *[other] { $piece } is { $short } short across, which eases in: pin the ends first, then the edges between.
}
save-down-eased = { $joining ->
    [lapped] { $piece } is { $short } short down, which eases in: hold the edges together as you lap them.
   *[other] { $piece } is { $short } short down, which eases in: pin the ends first, then the edges between.
}
save-across-edge = { $piece } is { $short } short across, at the outer edge, where the binding hides it.
save-down-edge = { $piece } is { $short } short down, at the outer edge, where the binding hides it.
save-across-resewn = { $joining ->
    [lapped] { $piece } is { $short } short across: unpick its upright laps and sew them that much narrower.
   *[other] { $piece } is { $short } short across: unpick its upright seams and sew them with that much less allowance.
}
save-down-resewn = { $joining ->
    [lapped] { $piece } is { $short } short down: unpick its level lap and sew it that much narrower.
   *[other] { $piece } is { $short } short down: unpick its level seam and sew it with that much less allowance.
}
save-across-renewed = { $piece } is { $short } short across: make another.
save-down-renewed = { $piece } is { $short } short down: make another.
save-across-left = { $piece } is { $short } short across and sewn in; its row stays short.
save-down-left = { $piece } is { $short } short down and sewn in; its column stays short.
reason-none-short = At { $size } no piece falls short.
reason-keep = { $n ->
    [one] At { $size } one piece is short, and saving it costs less than making every four smaller.
   *[other] At { $size } { $n } pieces are short, and saving them costs less than making every four smaller.
}
reason-larger = All fours came out larger than { $natural }; at { $size } none is short and the least is cut away. The throw grows accordingly.
reason-smaller = At { $natural } { $n ->
    [one] one piece is short
   *[other] { $n } pieces are short
}; at { $size } { $left ->
    [0] none is
    [one] one is
   *[other] { $left } are
}.
reason-cost = { $n ->
    [0] The least trouble overall: hardly any work or lost cloth.
    [one] The least trouble overall: about a minute’s work with the lost cloth counted in, by our estimate.
   *[other] The least trouble overall: about { $n } minutes’ work with the lost cloth counted in, by our estimate.
}
closing-all = All rows and columns come out as long as they should.
block-key-right = just right
block-key-short = short
block-key-over = to be trimmed
block-key-planned = by plan, not measured yet
block-key-open = not stitched yet
closing-row = { $of ->
    [pairs] Row of pairs { $n } comes out { $off }.
   *[fours] Row of fours { $n } comes out { $off }.
}
closing-column = { $of ->
    [pairs] Column of pairs { $n } comes out { $off }.
   *[fours] Column of fours { $n } comes out { $off }.
}

## Pieces that are off

off-block = It measures { $size }. Across: { $across }. Down: { $down }.
off-leans = It leans: pull it square and steam it flat (the iron and its steam burn: keep your hand clear), then measure it again. As it is now it holds only what follows.
off-thin-across = At its width, its upright laps leave too little fringe, unless the cloth has stretched: measure a lap.
off-thin-down = At its height, its level lap leaves too little fringe, unless the cloth has stretched: measure the lap.
off-thin-stretched = If the lap is as wide as planned, the cloth has stretched: then it is enough to trim off what is over when you square it up. If the lap is narrower, see below.
off-measure-first = Measure it to see what can be done about its size.
off-not-cut = This square is not cut yet.
off-which = If one of its squares is spoilt, choose which.
off-rest = What is wrong with it? Choose a square of it that is spoilt, or measure the piece.
off-rest-trim = Trim off what is over when you square it up. If something else is wrong, choose the square that is spoilt.
off-mis-cut = It was cut too small or crooked.
off-flaw = It has a hole, a stain or a worn patch.
off-scorched = It was scorched.
off-lost = It cannot be found.
way-spare = { $n ->
    [one] Put the spare square in
   *[other] Put one of { $n } spare squares in
}
way-spare-other = { $n ->
    [one] Put the spare of { $denim } in
   *[other] Put one of { $n } spares of { $denim } in
}
way-from-place = Put in the loose square of { $place }
way-from-place-open = { $place } is open then, and is to be cut again.
way-from-place-piece = Cut it from { $name }, { $part } (about { $over } over).
way-from-place-other = The pile has no more of { $own } to spare. { $denim } suits that place best instead: change its denim before you cut.
way-from-place-more = The pile has no more of { $own } to spare, nor of another denim, so that place waits until more cloth is found.
way-recut = Cut another
way-recut-more = Leave its place open until more cloth is found
way-recut-from = Cut another from { $name }, { $part } (about { $over } over)
way-recut-other = Cut one of { $denim } instead, from { $name }, { $part } (about { $over } over)
way-patch = { $face ->
    [front] Cover the damage with fabric on the front
   *[other] Cover the damage with fabric on the back
}
way-fewer-across = { $n ->
    [one] Make the throw one square across
   *[other] Make the throw { $n } squares across
}
way-fewer-down = { $n ->
    [one] Make the throw one square down
   *[other] Make the throw { $n } squares down
}
way-lap-less = { $joining ->
    [lapped] { $n ->
        [one] Lap it less where it meets its neighbour
       *[other] Lap it less where it meets its neighbours
    }
   *[other] { $n ->
        [one] Take less allowance where it meets its neighbour
       *[other] Take less allowance where it meets its neighbours
    }
}
way-resew = { $joining ->
    [lapped] Unpick its lap and sew it narrower
   *[other] Unpick its seam and sew it with less allowance
}
way-lap-again = Lift it and lap it again at { $lap }
way-lap-again-all = Lift all { $n } that were lapped at { $was }, and lap them again at { $lap }
way-resew-wider = { $joining ->
    [lapped] Unpick its lap and sew it again at { $lap }
   *[other] Unpick its seam and sew it again with { $lap } of allowance
}
way-trim = { $joining ->
    [lapped] { $n ->
        [0] Trim all fours to { $size }
        [one] Trim all fours to { $size }, and lap less at one join
       *[other] Trim all fours to { $size }, and lap less at { $n } joins
    }
   *[other] { $n ->
        [0] Trim all fours to { $size }
        [one] Trim all fours to { $size }, and take less allowance at one join
       *[other] Trim all fours to { $size }, and take less allowance at { $n } joins
    }
}
way-to-edge = Change places with { $place }, where the binding hides it
way-another = Set it aside and make another
way-fewer-itself = It lies in what is given up.
way-fewer-squares = { $n ->
    [one] That sets one good square free. Put it in here afterwards.
   *[other] That sets { $n } good squares free. Put one of them in here afterwards.
}
way-fewer-cloth = { $n ->
    [one] One square less is to be cut: cut this one from its cloth.
   *[other] { $n } squares less are to be cut: cut this one from their cloth.
}
way-spare-done = Done: a spare is taken for { $piece }.
way-from-place-done = Done: the square of { $place } goes to { $piece }. { $place } is to be cut again.
way-recut-done = Done: { $piece } is to be cut again.
way-patch-done = { $face ->
    [front] Done: { $piece } is to be covered on the front.
   *[other] Done: { $piece } is to be covered on the back.
}
way-fewer-across-done = { $n ->
    [one] Done: the throw is one square across now.
   *[other] Done: the throw is { $n } squares across now.
}
way-fewer-down-done = { $n ->
    [one] Done: the throw is one square down now.
   *[other] Done: the throw is { $n } squares down now.
}
way-lap-less-done = { $joining ->
    [lapped] { $n ->
        [one] Done: one join of { $piece } is marked with a narrower lap. Its step says so.
       *[other] Done: { $n } joins of { $piece } are marked with a narrower lap. Their steps say so.
    }
   *[other] { $n ->
        [one] Done: one join of { $piece } is marked with less allowance. Its step says so.
       *[other] Done: { $n } joins of { $piece } are marked with less allowance. Their steps say so.
    }
}
way-resew-done = { $joining ->
    [lapped] Done: the lap of { $piece } is to be unpicked and sewn narrower.
   *[other] Done: the seam of { $piece } is to be unpicked and sewn with less allowance.
}
way-lap-again-done = Done: { $piece } is to be lifted and lapped again at { $lap }.
way-lap-again-all-done = Done: { $n } are to be lifted and lapped again at { $lap }.
way-resew-wider-done = { $joining ->
    [lapped] Done: the lap of { $piece } is to be unpicked and sewn again at { $lap }.
   *[other] Done: the seam of { $piece } is to be unpicked and sewn again with { $lap } of allowance.
}
way-trim-done = { $joining ->
    [lapped] { $n ->
        [0] Done: all fours are trimmed to { $size } now.
        [one] Done: all fours are trimmed to { $size } now, and one join is lapped less. Its step says so.
       *[other] Done: all fours are trimmed to { $size } now, and { $n } joins are lapped less. Their steps say so.
    }
   *[other] { $n ->
        [0] Done: all fours are trimmed to { $size } now.
        [one] Done: all fours are trimmed to { $size } now, and one join has less allowance. Its step says so.
       *[other] Done: all fours are trimmed to { $size } now, and { $n } joins have less allowance. Their steps say so.
    }
}
way-to-edge-done = Done: { $piece } and { $place } have changed places; the binding hides what is short.
way-another-done = Done: { $piece } is set aside; another is to be made.
opening-square-sewn = { $n ->
    [one] First unpick one seam, before the new { $piece } goes in
   *[other] First unpick { $n } seams, before the new { $piece } goes in
}
opening-lap-sewn = { $n ->
    [one] First unpick one seam
   *[other] First unpick { $n } seams
}
opening-lap-glued = { $n ->
    [one] First lift the glued lap
   *[other] First lift { $n } glued laps
}
opening-lift = { $n ->
    [one] Dampen the lap of { $laps }, wait a minute, lift it slowly and let both edges dry.
   *[other] Dampen each lap, wait a minute, lift it slowly and let both edges dry: { $laps }.
}
opening-square-glued = { $n ->
    [one] First lift one glued lap, before the new { $piece } goes in
   *[other] First lift { $n } glued laps, before the new { $piece } goes in
}
opening-all = Unpick { $a } from { $b }: the whole seam, { $length }.
opening-part = Unpick { $a } from { $b }: only { $length }, along { $along }.
opening-binding = First open the binding along { $along }, and a little further on both sides.
relabel = Chalk the new labels on: { $list }.
relabel-many = Chalk new labels on { $n } squares.
relabel-row = Row { $row }: { $list }.
relabel-one = { $from } is now { $to }
way-lap-at = { $joining ->
    [lapped] Where it meets { $piece }: lap only { $lap }, not { $usual }.
   *[other] Where it meets { $piece }: an allowance of only { $lap }, not { $usual }.
}
way-lap-between = { $joining ->
    [lapped] Where { $a } meets { $b }: lap only { $lap }, not { $usual }.
   *[other] Where { $a } meets { $b }: an allowance of only { $lap }, not { $usual }.
}
way-new-lap = { $joining ->
    [lapped] New lap: { $lap }.
   *[other] New allowance: { $lap }.
}
way-unpick = { $n ->
    [one] One seam to unpick, { $length }.
   *[other] { $n } seams to unpick, { $length } in all.
}
way-unpick-then = { $n ->
    [one] To put it in, one seam is unpicked, { $length }.
   *[other] To put it in, { $n } seams are unpicked, { $length } in all.
}
way-another-takes = { $lacking ->
    [0] It takes { $n } squares, which are over.
   *[other] It takes { $n } squares, of which the pile and the spares lack { $lacking }.
}
way-nothing-undone = Nothing sewn is unpicked.
way-fabric-anew = The fabric glued on it is lost with it: glue on another square of { $print }.
way-fabric-anew-both = The fabric glued on both faces is lost with it: glue on two other squares of { $print }.
way-fabric-anew-both-of = The fabric glued on both faces is lost with it: that takes two other squares of { $print }; { $left ->
    [0] none is left.
    [one] one is left.
   *[other] { $left } are left.
}
way-fabric-anew-of = { $left ->
    [0] The fabric glued on it is lost with it, and no other square of { $print } is left.
    [one] The fabric glued on it is lost with it: glue on another square of { $print }; one is left.
   *[other] The fabric glued on it is lost with it: glue on another square of { $print }; { $left } are left.
}
way-patch-laid-on = No lap holds the edges of this patch. Trim it to { $side }, so that it lies clear of the laps, and stitch it down all round once it has cooled: the glue alone comes out in the wash. If the damage reaches further out, take another way.
way-patch-round = No lap holds the edges of this patch, so stitch it down all round once it has cooled: the glue alone comes out in the wash.
way-size = The throw will measure { $size }.
way-minutes = { $n ->
    [0] Hardly any work.
    [one] About a minute’s work, by our estimate.
   *[other] About { $n } minutes’ work, by our estimate.
}
aside = Left over: { $piece } ({ $size }), for a cushion front or a corner of the next throw.
aside-several = Left over: { $list }, for cushion fronts or corners of the next throw.
stays-lapped = Left as glued or sewn, with { $lap }: { $pieces }.
stays-glued = { $n ->
    [one] One of them is only glued: it can be lapped again, see “This one is off” at its step.
   *[other] { $n } of them are only glued: they can be lapped again, see “This one is off” at their step.
}
trim-again = To be trimmed again, to { $size }: { $pieces }.
trim-now = To be trimmed when squared up, to { $size }: { $pieces }.
marks-anew = Laps marked for pieces that are short are worked out again.
stays-short = Smaller than the new size and left at { $size }: { $pieces }.
moved = { $from } goes to the place of { $to }: chalk its new label on.

## Changed minds

compare-finished = Finished size
compare-squares = Squares to cut
compare-spares = Spare squares
compare-seams = Seams left
compare-time = Work left
time-own = about { $middle } ({ $low } to { $high }, by your own pace)
time-usual = about { $middle } ({ $low } to { $high }; an estimate until your own pace is known)
hours-shortly = { $time } h
hours = { $h ->
    [0] { $m } minutes
   *[other] { $m ->
        [0] { $h } h
       *[other] { $h } h { $m } min
    }
}

## Holding a size, and the whole piece

hold-left = { $n ->
    [0] No join between fours remains; the lap can change nothing any more.
    [one] One join between fours remains.
   *[other] { $n } joins between fours remain.
}
hold-fringe = It leaves { $fringe } of fringe each side.
hold-choose = Join the rest at { $lap }
figure-foreseen = Should measure
whole-across-exact = Across: { $foreseen }, exactly as it should be.
whole-down-exact = Down: { $foreseen }, exactly as it should be.
whole-across = Across: { $measured }. It should measure { $foreseen }: { $off }.
whole-down = Down: { $measured }. It should measure { $foreseen }: { $off }.
whole-within = Cloth gives that much when it is sewn (up to 2 %, common practice). Joins sewn a little beside their marks do the same.
whole-beyond = That is more than cloth usually gives when it is sewn (2 %, common practice). Measure a few joins: some may be sewn wider or narrower than marked.
whole-each = { $laps ->
    [one] It is all at one join: { $each }.
   *[other] Shared among { $laps } joins, that is { $each } at each.
}
whole-washed-unknown = It was not measured before washing, so what washing did cannot be told from what sewing did. Cloth usually draws in when washed.
whole-washed-across = Across: { $before } before, { $now } after { $n ->
    [one] one wash
   *[other] { $n } washes
}: { $by } { $how ->
    [less] less
   *[more] more
} ({ $percent } %).
whole-washed-down = Down: { $before } before, { $now } after { $n ->
    [one] one wash
   *[other] { $n } washes
}: { $by } { $how ->
    [less] less
   *[more] more
} ({ $percent } %).
whole-washed-across-same = Across: { $size }, as before washing.
whole-washed-down-same = Down: { $size }, as before washing.
whole-washed-usual = Cloth usually draws in when washed. It does not mean that anything is sewn wrong.
figure-before-wash = Before washing
whole-kept = { $n ->
    [0] Before washing: { $size }.
   *[other] After wash { $n }: { $size }.
}
whole-kept-change = { $n ->
    [0] Before washing: { $size }; change { $across } % across, { $down } % down.
   *[other] After wash { $n }: { $size }; change { $across } % across, { $down } % down (ISO 5077).
}
picture-blocks = { $n ->
    [0] The fours as they lie: none is short
    [one] The fours as they lie: one is short
   *[other] The fours as they lie: { $n } are short
}

## Plan and grids

plan-change = Change the plan
cloth-gives = { $pairs ->
    [one] One pair gives about { $low } to { $high } squares; measuring it tells more exactly.
   *[other] { $pairs } pairs give about { $low } to { $high } squares; measuring them tells more exactly.
}
cloth-covers = { $n ->
    [one] The fabric covers one face of a square.
   *[other] The fabric covers { $n } faces of squares.
}
cloth-enough = Your jeans are enough for it.
cloth-perhaps = { $most ->
    [one] Your jeans may be enough. If the legs come out small, it takes one more pair.
   *[other] Your jeans may be enough. If the legs come out small, it takes { $most } more pairs.
}
cloth-more = { $n ->
    [one] You need one more pair of this size.
   *[other] You need { $n } more pairs of this size.
}
cloth-more-range = You need { $least } to { $most } more pairs of this size.
cloth-pairs = { $n ->
    [one] You need about one pair of jeans.
   *[other] You need about { $n } pairs of jeans.
}
cloth-pairs-range = You need about { $least } to { $most } pairs of jeans.
cloth-never = Jeans of this size do not give enough squares for it.
cloth-takes = It takes { $n } squares, { $spares } more kept back as spares, and { $binding } of binding{ $strips ->
    [0] .
   *[other] , for which up to { $strips } more squares may be cut up.
}
grid-uses = { $left ->
    [0] Uses all { $n } squares.
    [one] Uses { $n } squares, one left over.
   *[other] Uses { $n } squares, { $left } left over.
}
grid-takes = { $n ->
    [one] Takes one square.
   *[other] Takes { $n } squares.
}
grid-width = Width: { $off }.
grid-height = Height: { $off }.
grid-odd-across = With an odd number across, one column of pairs stays beside the fours.
grid-odd-down = With an odd number down, one row of pairs stays below the fours.

## Pictures, in words

picture-front = Front of { $name }
picture-back = Back of { $name }
picture-step = { $task }: { $piece }
picture-measured = { $piece }, measured { $size }, with what is to be trimmed
picture-trim = trim { $length }
picture-missing = { $length } missing
picture-over = over
picture-under = under
picture-begin = begin
picture-section = The join in cross-section, to scale: { $lap } lap or allowance, fringe { $fringe }
picture-grid = Squares: { $across } across and { $down } down, finished { $size }

## History

history-undo = Undone: { $what }
history-redo = Redone: { $what }
did-begin = Begun: { $name }, { $grid }
did-rename = Named { $name }
did-archive = Put away
did-unarchive = Taken out again
did-change-plan = Plan changed: { $grid }, { $joining ->
    [lapped] lap
   *[other] seam allowance
} { $lap }, trim to { $trim }
did-face = { $piece }: front { $front }, back { $back }
did-faces = { $n ->
    [one] One square’s faces changed
   *[other] Faces of { $n } squares changed
}
did-cloth = Fabrics changed
did-cut = Cut: { $piece }
did-lap-halves = Halves lapped and glued: { $piece }
did-press-halves = Halves’ lap pressed: { $piece }
did-cool-halves = Halves’ lap cooled: { $piece }
did-stitch-halves = Halves stitched into a square: { $piece }
did-cut-fabric = Fabric squares cut: { $piece }
did-cover-front = Fabric glued on the front: { $piece }
did-cover-back = Fabric glued on the back: { $piece }
did-press-cover = Pressed: { $piece }
did-cool-cover = Cooled: { $piece }
did-stitch-patch = Patch stitched round: { $piece }
did-dot = Lapped and glued: { $piece }
did-press-lap = Lap pressed: { $piece }
did-cool-lap = Lap cooled: { $piece }
did-pin = Pinned: { $piece }
did-stitch = Stitched: { $piece }
did-press-seam = Seam pressed: { $piece }
did-press-block = Pressed flat: { $piece }
did-square-up = Squared up: { $piece }, { $size }
did-unmeasured = { $n ->
    [one] { $what } (one not measured)
   *[other] { $what } ({ $n } not measured)
}
sizes-differ = each at its own size
did-trim-edge = Whole edge pressed and trimmed
did-cut-binding = Binding strips cut
did-join-binding = Binding strips joined
did-press-binding = Binding folded and pressed
did-glue-binding = Binding folded over the edge
did-stitch-binding = Binding stitched
did-snip = Seam allowances snipped
did-wash = Washed
did-clip = Threads clipped
did-move-square = The loose square of { $from } goes to { $to }; { $from } is to be cut again
did-use-spares = Spare used: { $piece }
did-count-spares = { $n ->
    [0] No spare squares
    [one] One spare square at hand
   *[other] { $n } spare squares at hand
}
did-measure = Measured: { $piece }, { $size }
did-outline = Sides measured: { $piece }
did-mark-lap = { $joining ->
    [lapped] Lap marked where { $a } meets { $b }: { $lap }
   *[other] Allowance marked where { $a } meets { $b }: { $lap }
}
did-mark-laps = { $joining ->
    [lapped] { $n ->
        [one] One lap marked again
       *[other] { $n } laps marked again
    }
   *[other] { $n ->
        [one] One allowance marked again
       *[other] { $n } allowances marked again
    }
}
did-unpick = { $more ->
    [0] Opened again: { $piece }, { $length }
    [one] Opened again: { $piece } and one more join, { $length }
   *[other] Opened again: { $piece } and { $more } more joins, { $length }
}
did-lift = { $more ->
    [0] Lifted, only glue held it: { $piece }
    [one] Lifted, only glue held them: { $piece } and one more
   *[other] Lifted, only glue held them: { $piece } and { $more } more
}
did-lay-on = Fabric to be laid on where it is sewn in: { $piece }
did-not-lay-on = Fabric no longer to be laid on: { $piece }
did-patch = { $piece } to be covered where it is sewn: { $why }
did-move = { $n ->
    [2] { $from } and { $to } changed places
   *[other] { $n } pieces changed places, first { $from } to { $to }
}
did-turn = { $quarters ->
    [1] { $piece } turned a quarter clockwise
    [2] { $piece } turned half round
   *[other] { $piece } turned a quarter anticlockwise
}
did-turn-several = { $n } pieces turned
did-flip = Turned over: { $pieces }
did-pin-place = Kept in their places: { $pieces }
did-let-go = May move again: { $pieces }
did-wish = Fabric planned: { $front ->
    [one] one square
   *[other] { $front } squares
} on the front, { $back } on the back
did-wish-bare = No square is to have fabric
did-set-aside = Set aside: { $piece }
did-measure-whole = Whole throw measured: { $size }
did-heap = On the pile: { $name }
did-take-heap = Taken off the pile
did-cut-piece = Cut up a piece of { $name }: { $n ->
    [one] { $n } square
   *[other] { $n } squares
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , one binding strip
   *[other] , { $strips } binding strips
}
did-cut-lines = { $n ->
    [0] Cutting list of a piece of { $name } started again
    [one] Cutting list of a piece of { $name }: first line done
   *[other] Cutting list of a piece of { $name }: first { $n } lines done
}
did-scrap = Test scrap, { $joining ->
    [lapped] lap
   *[other] seam allowance
} { $lap }: { $verdict }
did-plate = Plate opening measured: { $opening }
did-gather = Laid ready
did-ungather = Not at hand after all
did-spoil = { $piece } is spoilt: { $why }
did-note = Note: { $text }

## Advice about a plan

error-advice-fringe = The fringe each side would be { $fringe }. With so little, the thread works out in time (common practice).
error-advice-fringe-next = { $enough } leaves enough fringe. Sew a test scrap with it; that decides.
error-advice-fringe-beyond = No lap or allowance on squares of this size leaves { $least } of fringe each side: it is always less than { $most }.
error-advice-fringe-beyond-next = Check the unit of the least fringe: 3 mm, about ⅛ in, is usual (common practice).
error-advice-odd = An odd count leaves single pairs beside the fours. They are planned too.
error-advice-odd-next = Nothing to do; even counts are a little less work.
error-advice-trim = With this lap a four comes out at { $natural }: it cannot be trimmed to { $trim }.
error-advice-trim-next = Leave the trim size empty, or choose { $natural } or less.
error-advice-twin = A twin needle takes two spools, and one face is always the stitching side. Needles { $spacing } apart strike the plate where the stitch is set wider than the plate’s opening leaves: set a straight stitch, needle in the middle, and turn the wheel by hand once round.
error-advice-twin-next = Keep the same side up, and turn the wheel by hand once before you start. Two rows with a single needle, one after the other, do as well; then either side may lie up.
error-advice-twin-hidden = A twin needle in a hidden seam holds the allowances together between its two rows: the seam cannot be pressed open, and its stitches show where it is pulled (common practice).
error-advice-twin-hidden-next = A single needle is usual for a hidden seam. With the twin needle, press each seam to one side.
error-advice-lap-large = A third or more of each square is lost in the joins.
error-advice-lap-large-next = Narrower joins or larger squares give more throw for the cloth.

## What was typed

error-typed-empty = Nothing is written here yet.
error-typed-empty-next = Write a measure, such as { $example }.
error-typed-not-a-length = Lapwork cannot read this as a measure.
error-typed-not-a-length-next = Write it like { $example }.
error-typed-negative = A measure cannot be less than zero.
error-typed-negative-next = Leave out the minus: { $example }.
error-typed-ambiguous = That could be read two ways.
error-typed-ambiguous-next = Write the unit and one decimal sign: { $example }.
error-typed-off-the-marks = That falls on no mark of a ruler.
error-typed-off-the-marks-next = The nearest sixteenth is { $nearest }.
error-typed-too-long = That is longer than 100 metres.
error-typed-too-long-next = Check the unit: { $example }.
error-typed-unknown-unit = Lapwork does not know the unit “{ $unit }”.
error-typed-unknown-unit-next = Use in, ft, yd, mm, cm or m, as in { $example }.
error-typed-not-a-count = That is not a whole number.
error-typed-not-a-count-next = Write a number such as 6.

## Plans that cannot be

error-plan-side = The square’s side is too large or too small.
error-plan-side-next = Choose a side from { $least } to { $most }.
error-plan-grid = That is too many squares, or none.
error-plan-grid-next = Choose from 1 to { $most } squares each way.
error-plan-lap = The lap or seam allowance is zero, or takes half the square or more.
error-plan-lap-next = Choose a lap under half the square’s side; { $usual } is usual on denim.
error-plan-between = The lap between fours is zero, or leaves nothing of the square.
error-plan-between-next = Choose a lap under half the square’s side, or leave it empty for the same lap everywhere.
error-plan-stitch = The stitching is wider than what it must hold.
error-plan-stitch-next = Choose a narrower stitch or a wider lap.
error-plan-stitch-length = No machine sews a stitch of that length.
error-plan-stitch-length-next = Choose from { $least } to { $most }; 3 to 3.5 mm is usual on denim.
error-plan-trim = A four cannot be trimmed to that size.
error-plan-trim-next = Choose a size larger than one square and no larger than two, or leave it empty.
error-plan-binding = The binding cannot be cut like that.
error-plan-binding-next = Choose a strip at least { $least } wide, no wider than a square, and pieces longer than two laps.
error-plan-counts = That is more washing or cooling than this plan holds.
error-plan-counts-next = Choose up to 9 washes and up to 240 minutes.

## Refusals

error-beginning = The throw is begun once, before anything else.
error-beginning-next = Go back to the list of throws and open it, or begin a new one.
error-name = A name needs from 1 to { $most } characters.
error-name-next = Write a short name, such as Porch throw.
error-words = A note needs from 1 to { $most } characters.
error-words-next = Write a shorter note, or two.
error-no-such-piece = There is no piece { $piece } in this throw.
error-no-such-piece-next = Open the bench and choose a piece there.
error-nothing = There is nothing to change.
error-nothing-next = Choose a piece that is not like that already.
error-not-its-task = { $piece }: “{ $task }” is done already or is not needed.
error-not-its-task-next = Look at the next step; undo takes a step back.
error-first = { $piece }: cannot { $task } yet.
error-first-next = { $before } comes first: { $needs }.
error-already-cut = { $squares ->
    [one] One square is cut already at the old size.
   *[other] { $squares } squares are cut already at the old size.
}
error-already-cut-next = Keep this size, or begin another throw with the new one.
error-denim-cut = { $piece } is cut already, so its denim stays.
error-denim-cut-next = Choose squares that are still to be cut; a loose square can be turned over.
error-cut-larger = Squares are not cut larger by so much.
error-cut-larger-next = Choose a small allowance, or nothing.
error-pack-small = Squares of { $side } are too small for this throw: it is planned with { $wanted }.
error-pack-small-next = They fit a throw of { $side } squares: change the plan before any square is cut. In the middle of a { $wanted } square they would leave { $round } of denim all round, where the laps would catch their edges in places, so this plan does not use them. Up to { $most } they lie clear of the laps, as patches. A pack of { $wanted } or larger can be cut down.
error-pack-small-denim = Squares of { $side } are too small for this throw: it is planned with { $wanted }.
error-pack-small-denim-next = They fit a throw of { $side } squares: change the plan before any square is cut. A pack of { $wanted } or larger can be cut down.
error-pieced = This piece does not give so many squares of two halves.
error-pieced-next = Count the pairs of halves once more, and choose the way with halves before you cut.
error-pack-mixed = { $print } has squares of another size already.
error-pack-mixed-next = Patches and whole squares of one fabric are kept apart: put these down as a fabric of its own.
error-same-name = Two of them would be called { $name }.
error-same-name-next = Give each fabric and each denim a name of its own, so that a list can say which it means.
error-patch-caught = Patches of { $side } would be caught by the laps of this plan in places.
error-patch-caught-next = Choose laps and a trim size that leave them clear: up to { $most } with these. Or take the patches off the faces and off the pile first.
error-pack-side = Squares bought ready cut are not that large, or not that small.
error-pack-side-next = Measure the side of one square, and check the unit.
error-edges = Nothing would be left of this cloth once its edges are trimmed.
error-edges-next = Check the units, and how much comes off each edge.
error-already-made = { $piece } is made already and has no place in that plan.
error-already-made-next = Choose a grid and an order that keep it, or undo back to before it was made.
error-joined = { $piece } is joined to others already.
error-joined-next = What is sewn stays sewn. Choose a square that is still loose.
error-glued = { $piece } has its fabric glued there already.
error-glued-next = Choose another square, or undo the gluing.
error-stock = { $have ->
    [0] There is no square of { $print }.
    [one] There is only one square of { $print }.
   *[other] There are only { $have } squares of { $print }.
}
error-stock-next = Choose fewer, another fabric, or correct the count in the list of fabrics.
error-cloth = That list of fabrics cannot be: one in use is missing, a colour is not a colour, or there are over { $most }.
error-cloth-next = Keep every fabric that is in use; give each a name and a colour.
error-spares = { $have ->
    [0] There is no spare square.
    [one] There is one spare square.
   *[other] There are { $have } spare squares.
}
error-spares-next = Cut a new square, or correct the count of spares on the bench.
error-not-measurable = { $piece } cannot be measured for squaring up now.
error-not-measurable-next = Measure a four or single pair once it is stitched and before it is squared up.
error-pile = That is not on the pile, or the pile is full.
error-pile-next = Go back to the pile and choose a piece there.
error-cut-up = That piece is cut up already.
error-cut-up-next = What was counted stands; undo takes the last count back.
error-many-squares = That is more squares than it can give.
error-many-squares-next = Count again; { $most } is the most that is taken.
error-weight = That is not a weight of cloth.
error-weight-next = Write it like 14 oz or 475 g/m².
error-scrap = There is no such test scrap.
error-scrap-next = Choose one from the list.
error-piece-few = An outline needs at least two widths.
error-piece-few-next = Measure at the hem and at the waist end, and once or twice between.
error-piece-many = That is more than one outline holds.
error-piece-many-next = A few widths and a few places to avoid are enough.
error-piece-far = Width { $n } lies too far out.
error-piece-far-next = Check the unit.
error-piece-order = Width { $n } is not above the one before it.
error-piece-order-next = Put the widths in order from the hem up.
error-piece-crossing = At width { $n } the edges cross.
error-piece-crossing-next = A width cannot be less than zero.
error-piece-no-width = The piece has no width anywhere.
error-piece-no-width-next = Measure it at its widest.
error-piece-no-width-at = Width { $n } is zero.
error-piece-no-width-at-next = Measure across the cloth there, or take that width out.
error-piece-too-wide = Width { $n } is wider than such cloth comes.
error-piece-too-wide-next = Check the number and its unit.
error-piece-zone-far = Place to avoid { $n } lies too far out.
error-piece-zone-far-next = Check the unit.
error-piece-zone-empty = Place to avoid { $n } has no size.
error-piece-zone-empty-next = Write where it begins and ends.
error-piece-zone-outside = Place to avoid { $n } lies outside the piece.
error-piece-zone-outside-next = Heights count from the hem, widths from the left edge.
error-not-whole = The throw is not in one piece yet.
error-not-whole-next = Measure the whole once the last join is stitched.
error-unlikely = { $given } is not likely: { $planned } was planned.
error-unlikely-next = Check the unit and measure again.
error-not-cut = { $piece } is not cut yet.
error-not-cut-next = Only a square that has been cut can be spoilt.
error-outline-impossible = No block has such sides and diagonals.
error-outline-impossible-next = Measure the sides and both diagonals again.
error-outline-open = These measures do not fit together: they are { $by } apart.
error-outline-open-next = Measure { $line } again.
error-nothing-to-unpick = { $piece } has nothing sewn that could be unpicked, or is joined on already.
error-nothing-to-unpick-next = Choose a piece that is sewn and still loose.
error-lap-too-narrow = A lap of { $lap } leaves too little fringe.
error-lap-too-narrow-next = { $least } is the narrowest that holds; or change the least fringe in the plan.
error-not-neighbours = { $a } and { $b } are not two neighbours still to be joined.
error-not-neighbours-next = Choose two that lie side by side and are not sewn yet.
error-covered = { $piece } is covered on that face already.
error-covered-next = Cover the other face, or put another square in.
error-wishes = More squares are to be covered than the throw has.
error-wishes-next = Choose { $most } or fewer on each face.
error-pinned = { $piece } is kept in its place.
error-pinned-next = Choose “Let it move” first.
error-not-turnable = { $piece } cannot be turned that way.
error-not-turnable-next = A stitched four turns by quarters, a pair half round, neither once it is joined to others.
error-layout = This layout no longer fits the throw: it differs at { $piece }.
error-layout-next = Ask for new layouts.
error-not-swappable = { $a } and { $b } cannot change places.
error-not-swappable-next = Choose two of the same shape, neither joined to others yet.
error-nothing-to-undo = There is nothing to undo.
error-nothing-to-undo-next = Every step so far is in the history.
error-nothing-to-redo = There is nothing to redo.
error-nothing-to-redo-next = Only what was just undone can be redone.

## Files

error-file-not-a-throw = This is not a throw file.
error-file-not-a-throw-next = Choose a file named throw.jsonl that Lapwork wrote.
error-file-newer = This throw was written by a newer Lapwork (file version { $version }).
error-file-newer-next = Open it with that version; it is left untouched here.
error-file-line = The throw file is damaged at line { $line }, with sound lines after it.
error-file-line-next = It is left untouched. Use a copy from before, or keep the file for someone who can mend it.
error-file-out-of-order = Line { $line } of the throw file does not follow from those before it.
error-file-out-of-order-next = It is left untouched. Use a copy from before, or keep the file for someone who can mend it.
error-file-empty = The throw file has no beginning.
error-file-empty-next = It is left untouched. Use a copy from before.

## The clothes pile and cutting

figure-wanted = Squares wanted
figure-cut-for-it = Cut
figure-open = Still to cut
figure-spares = Spare
figure-to-come = The pile still gives
figure-keep-back = Spares to keep back
figure-strips-open = Binding strips to cut
strips-of = { $open } of { $wanted }
figure-patch = Patch
figure-round-patch = Denim round it
figure-squares-here = Squares it gives
figure-came-out = Squares that came out
cut-came-of = { $planned } were drawn; the picture does not show which of them came out.
figure-strips-came-out = Binding strips that came out
pile-enough = { $over ->
    [0] Just enough denim squares, none to spare.
    [one] Enough denim squares: one more than the throw takes.
   *[other] Enough denim squares: { $over } more than the throw takes.
}
pile-few-spares = { $over ->
    [0] Just enough denim squares, but none to spare: better have about { $keep }, since some are scorched or miscut.
    [one] Enough denim squares: one more than the throw takes. Better have about { $keep } to spare, since some are scorched or miscut.
   *[other] Enough denim squares: { $over } more than the throw takes. Better have about { $keep } to spare, since some are scorched or miscut.
}
pile-perhaps-uneven = Perhaps enough denim squares in all, but not of each denim as the squares share them now: what is not measured yet may give anything from { $low } to { $high }, and { $wanted } are still wanted, with the spares to keep back.
pile-perhaps = Perhaps enough denim squares: what is not measured yet may give anything from { $low } to { $high }, and { $wanted } are still wanted, with the spares to keep back. The range narrows as you measure and cut.
pile-strips-cut = { $n ->
    [one] The binding strip is cut.
   *[other] All { $n } binding strips are cut.
}
pile-strips-planned = { $n ->
    [one] The pile gives the binding strip too, { $size }.
   *[other] The pile gives the { $n } binding strips too, { $size } each.
}
pile-strips-lacking = { $lacking ->
    [one] Not enough for the binding: one of { $n } strips, { $size }, needs other cloth.
   *[other] Not enough for the binding: { $lacking } of { $n } strips, { $size } each, need other cloth.
}
pile-strips-over = { $n ->
    [one] One binding strip that is cut already is more than the binding takes now. Keep it for a patch.
   *[other] { $n } binding strips that are cut already are more than the binding takes now. Keep them for patches.
}
way-share-denims = Share the squares out over the denims you have
way-shorter-strips = { $n } binding strips of { $size }
way-shorter-strips-joins = The pile gives these. The binding then has { $n } joins, not { $before }.
strips-cut-already = Strips cut already: { $cut } of { $wanted }, { $open } to go.
strips-all-cut = { $n ->
    [one] The strip was cut with the squares. Lay it ready.
   *[other] All { $n } strips were cut with the squares. Count them and lay them ready.
}
strips-on-lap = With strips of this length one join of the binding comes on a join of the squares or on a corner, wherever it begins, and grows thick there. If the cloth allows it, make the longest strip a little longer or shorter first, under “Plan”.
strips-from = { $n } from { $what }
strips-from-pile = From the pile: { $list }.
pile-uneven = Enough denim squares in all, but not of each denim.
pile-short = { $short ->
    [one] One denim square short, and { $keep } more to keep back as spares.
   *[other] { $short } denim squares short, and { $keep } more to keep back as spares.
}
pile-empty = Nothing on the pile yet. Add a garment, cloth or a pack of squares.
pile-all-cut = Every denim square is cut.
pile-of-denim = { $denim }: { $open } still to cut, { $gives } to come from the pile{ $short ->
    [0] .
   *[other] ; { $short } short.
}
pile-estimate = Measure each piece before you cut it.
pile-range = What is not measured yet may give anything from { $low } to { $high } squares. The range narrows as you measure and cut.
heap-denim = For the denim squares
heap-denim-of = For squares of { $denim }
heap-fabric = For { $print }
heap-gives = { $what }: { $n ->
    [one] { $n } square
   *[other] { $n } squares
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , one binding strip
   *[other] , { $strips } binding strips
}
make-denim = Denim squares
make-denim-of = Denim squares: { $denim }
squares-parted = {" "}({ $whole } whole + { $n } pieced)
number-about = about { $n }
cut-held = All of it is worked out when you let go.
number-parted = { $n }{ $parts }
pack-patches = Each is a patch of { $side } in the middle of a denim square of { $wanted }: glued, stitched round, with { $round } of denim all round, clear of the laps.
piece-expected = { $n ->
    [one] about { $n } square
   *[other] about { $n } squares
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , one binding strip
   *[other] , { $strips } binding strips
}
piece-counted = { $n ->
    [one] { $n } square{ $parts }
   *[other] { $n } squares{ $parts }
}{ $strips ->
    [0] { "" }
    [one] {" "}and one binding strip
   *[other] {" "}and { $strips } binding strips
} came out
part-left-leg = Left leg
part-right-leg = Right leg
part-front = Front
part-sleeve = Sleeve
part-back = Back
part-pocket = Back pocket
part-waistband = Waistband
part-start = This outline is only a starting point, from common practice. Measure yours.
add-pocket = Lay a back pocket flat as well
add-waistband = Lay the waistband flat as well
cut-small-strips = { $n ->
    [one] It still gives a binding strip.
   *[other] It still gives { $n } binding strips.
}
cut-small-patch = A patch of { $size } can be cut from it, for a worn place.
cut-small-pocket = Or keep it whole and sew it onto a square as a pocket.
part-panel = Panel
part-sheet = Sheet
part-cloth = Cloth
cloth-patches = The pack gives { $n } patches of { $side }, each in the middle of a denim square with { $round } of denim round it, and stitched round.
cloth-fat-quarter = Fat quarter
cloth-yardage = Cotton by the yard or metre
cloth-piece = Another piece
heap-cut-down = { $gives }. { $cut }
pack-cut-down = Squares of { $side } are cut down to { $wanted }: each gives { $n ->
    [one] one
   *[other] { $n }
}{ $over ->
    [0] , with nothing left over.
   *[other] , and strips { $left } wide are left over.
}
part-pack = Pack
part-numbered = { $part } { $n }
garment-mens-jeans = Men’s jeans
garment-womens-jeans = Women’s jeans
garment-childs-jeans = Child’s jeans
garment-jacket-back = Back of a denim jacket
garment-skirt = Denim skirt
garment-shirt = Shirt
garment-blouse = Blouse
garment-sheet = Bed sheet
size-small = Small
size-medium = Medium
size-large = Large
zone-outseam = Outseam ridge
zone-hem = Hem
zone-pocket = Pocket
zone-knee = Worn knee
zone-hole = Hole
zone-stain = Stain
zone-cut-edge = Cut edge to trim
zone-selvedge = Selvedge
zone-seam = Seam
heap-take = Take { $name } off the pile
piece-keep = Keep this outline
mirror-left-leg = The left leg is the same, mirrored
mirror-right-leg = The right leg is the same, mirrored
mirror-front = The other front is the same, mirrored
mirror-sleeve = The other sleeve is the same, mirrored
mirror-worn-left-leg = Mark where the left leg is worn
mirror-worn-right-leg = Mark where the right leg is worn
mirror-worn-front = Mark where the other front is worn
mirror-worn-sleeve = Mark where the other sleeve is worn
worn-asked = Where is this one worn? Its outline, hem and seams are those of the other half, mirrored. A worn knee, holes and stains were not taken over: mark them here.
worn-asked-marked = Where is this one worn? Its outline, hem and seams are those of the other half, mirrored. Worn places were not taken over. Marked here so far: { $places }. Move them, add others, or take them out.
worn-nothing = No other place is worn
knee-guessed = The worn knee in the picture is a guess, since nobody has looked yet. Hold the leg up to the light, then set the knee right or take it off.
worn-heed = Nobody has marked yet where this piece is worn: look it over before you cut.
piece-worn-unsaid = { $gives }; worn places not marked yet
cut-row = { $title }. { $text }
cut-straight-title = A straight edge
cut-straight = Cut straight across, { $above } above the { $low ->
    [hem] hem
   *[edge] lower edge
}.
cut-binding-title = Binding strip
cut-binding-line = { $size }, { $way ->
    [along] along the piece
   *[across] across the piece
}.
cut-binding-begin = Begin { $height }, { $side }.
cut-binding-at = { $low ->
    [cut] at the straight edge
    [straight] at the straight edge
    [hem] at the hem
   *[edge] at the lower edge
}
cut-binding-above = { $above } above the { $low ->
    [cut] straight edge
    [straight] straight edge
    [hem] hem
   *[edge] lower edge
}
cut-binding-edge = its lower left corner on the left edge there
cut-binding-left = its lower left corner { $left } from the left edge there
cut-binding-strip-edge = right beside the strip cut before, to its right
cut-binding-strip = { $left } to the right of the strip cut before
cut-strip-title = Strip { $n }: { $squares ->
    [one] one square
   *[other] { $squares } squares
}{ $halves ->
    [0] { "" }
    [one] , one half
   *[other] , { $halves } halves
}
cut-away = First cut off { $gap } as waste.
cut-across = Cut across { $high } above the { $from ->
    [hem] hem
    [straight] straight edge
    [edge] lower edge
   *[cut] last cut
}.
cut-turn-title = Turn the piece
cut-turn = Lay it a quarter turned, the { $end ->
    [hem] hem
   *[edge] lower edge
} to your left, and cut the strips along it.
cut-turn-label-free = Chalk each label with the top of its letters to the right. Laid out with the letters upright, a square lies like all the others. Turned otherwise its twill runs the other way, and it stretches the other way.
cut-turn-label-one-way = Chalk each label with the top of its letters to the right. You want the lengthwise grain up and down in every square: lay each with its letters upright.
cut-turn-label-by-turns = Chalk each label with the top of its letters to the right. You want the grain turned from each square to the next: with the letters upright it runs up and down, with the letters on their side it runs across.
cut-halves-title = { $n ->
    [one] One half
   *[other] { $n } halves
}
cut-halves-across = From the cloth { $lies ->
    [below] left below strip { $n }
    [above] left above strip { $n }
   *[alone] itself
}, cut a row { $high } high.
cut-half-beside = Then, right beside the squares, one half { $wide } wide.
cut-half-run = Starting { $left } from its lower left corner: { $count ->
    [one] one half { $wide } wide.
   *[other] { $count } halves, each { $wide } wide.
}
cut-half-run-edge = Starting at its lower left corner: { $count ->
    [one] one half { $wide } wide.
   *[other] { $count } halves, each { $wide } wide.
}
cut-half-run-strip = Starting { $left } right of the binding strip: { $count ->
    [one] one half { $wide } wide.
   *[other] { $count } halves, each { $wide } wide.
}
cut-half-run-strip-edge = Right beside the binding strip: { $count ->
    [one] one half { $wide } wide.
   *[other] { $count } halves, each { $wide } wide.
}
cut-top-title = A straight upper edge
cut-top = From here on measure from the upper edge. Cut straight across, { $below } below it.
cut-down-edge = From here on measure from the upper edge. Cut across { $high } below it.
cut-down = Cut across { $high } below the last cut.
way-plain = In strips from the lower edge up
way-both = From both edges
way-turned = Turned a quarter
way-turned-both = Turned a quarter, from both edges
way-gives = { $n ->
    [one] { $n } square
   *[other] { $n } squares
}{ $parts }{ $strips ->
    [0] { "" }
    [one] {" "}and { $strips } binding strip
   *[other] {" "}and { $strips } binding strips
}
way-more = { $name }: { $gives }, { $more ->
    [0] no more
    [one] one more
   *[other] { $more } more
}
way-both-text = The lower strips are measured from the lower edge, the others from the upper edge down; what is over lies between them.
way-turned-text = The piece lies on its side and its strips run along it, so that squares come off the strip a quarter turned.
way-pieced = { $name }, with halves of what is left
way-pieced-text = What the squares leave is cut into halves of { $half }. Two of them, with the grain running the same way, are lapped by { $lap } and stitched into a square before it is used: more laps to sew, and two layers along its middle.
way-take = Cut it this way: { $name }
spare-label = S
cut-chalk = Chalk on them: { $places }{ $spare ->
    [0] .
    [one] , and S on the spare.
   *[other] , and S on the { $spare } spares.
}
cut-chalk-halves = Chalk on the halves, in twos: { $places }.
cut-chalk-spare = { $spare ->
    [one] It is a spare: chalk S on it.
   *[other] They are spares: chalk S on them.
}
cut-line-done = { $title }: cut
cut-left = Keep what is left: a piece of about { $size } and the scraps.
cut-all-came = { $n ->
    [one] { $n } of { $n } square came out
   *[other] All { $n } squares came out
}{ $parts }{ $strips ->
    [0] { "" }
    [one] , and the strip
   *[other] , and { $strips } strips
}
cut-none-came = { $strips ->
    [0] Nothing is to be cut from it
    [one] The binding strip came out
   *[other] All { $strips } binding strips came out
}
cut-next = Cut { $name }: { $part }
cut-denims = Still to cut: { $list }.
cut-from = To be cut from: { $heaps }.
cut-of-denim = { $n } from { $denim }
cut-run = { $nth ->
    [first] Off it
   *[next] Then
}, starting { $left } from its lower left corner: { $count ->
    [one] one square.
   *[other] { $count } squares.
}
cut-run-edge = { $nth ->
    [first] Off it
   *[next] Then
}, starting at its lower left corner: { $count ->
    [one] one square.
   *[other] { $count } squares.
}
cut-run-strip = { $nth ->
    [first] Off it
   *[next] Then
}, starting { $left } right of the binding strip: { $count ->
    [one] one square.
   *[other] { $count } squares.
}
cut-run-strip-edge = { $nth ->
    [first] Off it
   *[next] Then
}, right beside the binding strip: { $count ->
    [one] one square.
   *[other] { $count } squares.
}
cut-stretch = It stretches: keep to the grain and hold the laps with glue rather than pins.
cut-unwashed = Not washed yet: wash and press it before you cut.
cut-nothing = No whole square fits clear of the places to avoid.
cut-gain = { $n ->
    [one] Choosing where the strips lie gives one square more.
   *[other] Choosing where the strips lie gives { $n } squares more.
}
cut-free = { $n ->
    [one] If the strips need not go straight across, it could give one square more; that is slow, and easily goes wrong.
   *[other] If the strips need not go straight across, it could give { $n } squares more; that is slow, and easily goes wrong.
}
cut-most = However it is cut, it gives no more whole squares.
cut-bound = However it is cut, it gives no more than { $most } whole squares.
cut-pieced = { $n ->
    [one] One square is pieced of two halves of what is left.
   *[other] { $n } squares are pieced, each of two halves of what is left.
}
picture-piece = { $name }, { $n ->
    [one] one square
   *[other] { $n } squares
}{ $parts } in { $strips ->
    [one] one strip
   *[other] { $strips } strips
}, places to avoid hatched

## What to have at hand

item-denim = Denim
item-denim-squares = { $n ->
    [one] One square of { $side }
   *[other] { $n } squares of { $side }
}{ $begun ->
    [0] .
   *[other] ; { $open } still to cut.
}
item-denim-pieced = { $n ->
    [one] One of them is pieced of two halves, lapped by { $lap }.
   *[other] { $n } of them are pieced of two halves, lapped by { $lap }.
}
item-denim-spares = { $n ->
    [one] And one spare square.
   *[other] And { $n } spare squares.
}
item-denim-unpiled = { $n ->
    [one] One square is still missing. No denim is on the pile yet.
   *[other] { $n } squares are still missing. No denim is on the pile yet.
}
item-denim-of = { $denim }: { $n ->
    [one] one square
   *[other] { $n } squares
}{ $begun ->
    [0] { "" }
   *[other] , { $open } still to cut
}{ $piled ->
    [0] .
   *[other] , { $gives } to come from the pile.
}
item-denim-of-strips = { $squares } { $n ->
    [one] One binding strip comes from it too.
   *[other] { $n } binding strips come from it too.
}
item-denim-named = Denim: { $denim }
item-fabric-patches = { $n ->
    [one] One patch of { $side }.
   *[other] { $n } patches of { $side }.
}
item-fabric-squares = { $n ->
    [one] One square of { $side }.
   *[other] { $n } squares of { $side }.
}
item-enough = { $n } at hand: enough.
item-enough-of-it = That is enough.
item-enough-in-all = With those at hand { $n } in all: enough.
item-fabric-piled = { $n ->
    [one] One square is to come from the pile.
   *[other] { $n } squares are to come from the pile.
}
item-from-spares = { $n ->
    [one] One of them is to be taken from the spares.
   *[other] { $n } of them are to be taken from the spares.
}
item-short = { $n ->
    [one] One short.
   *[other] { $n } short.
}
item-fat-quarters = { $n ->
    [one] If you buy it by the fat quarter: one, which gives { $each }.
   *[other] If you buy it by the fat quarter: { $n }, each of which gives { $each }.
}
item-binding = Binding strips
item-binding-strips = { $n ->
    [one] One strip, { $width } wide, { $longest } long.
   *[other] { $n } strips, { $width } wide, { $longest } long.
}
item-binding-length = { $n ->
    [0] { $length } in all, no joins.
    [one] { $length } in all, one join.
   *[other] { $length } in all, { $n } joins.
}
item-thread = Thread
item-thread-needles = { $needles ->
    [one] { $each } for the needle.
   *[other] { $each } for each needle.
}
item-thread-in-all = { $n ->
    [one] One spool of { $size } is enough, with the bobbins wound from it too. This is an estimate.
   *[other] Have { $n } spools of { $size }; the bobbins are wound from the same thread. This is an estimate.
}
item-thread-twin = A twin needle takes two spools on the machine at once.
item-thread-rows = Two rows with one needle take one spool on the machine, and twice the thread of one row.
item-thread-rule = The thread makers’ rule of 2½ times each row says { $length } in all; on thick laps it falls short.
item-bobbins = Bobbins
item-bobbins-length = { $length }: { $n ->
    [one] one bobbin of { $size }
   *[other] { $n } bobbins of { $size }
}.
item-needles = Needles
item-needles-besides = For the binding, a single jeans needle as well: a twin needle cannot turn its corners.
item-needles-spare = One or two to spare; thick crossings break them.
item-glue = Washable glue
item-glue-dots = About { $dots } dots, { $n ->
    [one] one bottle of { $size }
   *[other] { $n } bottles of { $size }
} (our estimate).
bottle-inch = 4 fl oz
bottle-metric = 118 ml
item-marker = A vanishing fabric marker
item-marker-test = Try it on a scrap and iron that: heat sets some marks for good, and others come back with cold.
item-cutter = Cutter, mat and ruler
item-cutter-what = A ruler at least { $side } wide helps most.
item-cutter-square = For squaring up, a square ruler of { $side } or more.
item-press = Iron, pressing cloth, and a flat place to cool
item-press-what = The cloth keeps glue off the iron. What is pressed lies flat until it is cool.
item-clips = Clips
item-clips-what = They hold the binding on the edge until it is pressed; a dozen will do.
item-clips-pins = Pins and clips
item-clips-pins-what = Pins hold the edges of every seam. Clips hold the binding; a dozen will do.
item-ripper = Seam ripper and thread snips
item-ripper-what = To open a seam, and to clip the long threads after each wash.
item-ripper-snip = To open a seam, to snip the allowances, and to clip the long threads after each wash.
item-care = Eye protection, and a laundry bag
item-care-what = Thick crossings can break a needle; the first wash sheds lint.
figure-weight = Finished weight
figure-denim-weight = Denim
figure-time = Work left
kilograms = { $n } kg
grams = { $n } g
ounces-weight = { $n } oz
pounds = { $n } lb
gsm = { $n } g/m²
ounces = { $n } oz/yd²
metres = { $n } m
yards = { $n } yd
washer-roomy = It goes into a household washer ({ $size }) with room to move.
washer-tight = It fills a household washer ({ $size }): wash it by itself.
washer-heavy = It is too heavy for a household washer ({ $size }): use a larger machine, such as one at a launderette.
gather-estimates = Weight and thread are worked out from usual cloth unless the pile says otherwise.

## Test scraps

scrap-plan = The plan
scrap-typed = This scrap
scrap-right = Just right
scrap-little-fringe = Too little fringe
scrap-bulky = Too bulky
scrap-puckers = Puckers or skips
scrap-other = Something else
scrap-title = { $joining ->
    [lapped] Lap { $lap }, { $stitch }
   *[other] Seam allowance { $lap }, { $stitch }
}
scrap-fringe = Fringe each side { $fringe }
scrap-use = Take this for the plan
scrap-keep-plate = Keep the plate’s opening
stitch-straight = one straight row
stitch-twin = twin needle { $width }
stitch-two-rows = two rows { $width } apart
stitch-zigzag = zigzag { $width }
figure-stitch = Stitch
figure-thick-lap = Thickest join
figure-thick-crossing = Thickest crossing
figure-widest = Widest stitch to set
thick = about { $n } mm, { $layers } layers
strikes = none: the needle strikes the plate

## On paper

sheet-both = { $first } ({ $second })
sheet-subtitle = { $squares }, { $grid }; finished { $size }
sheet-day = Printed on { $day }
sheet-system-inch = Inches
sheet-system-metric = Metric
sheet-making = Making sheet
sheet-bench = Wall card
sheet-handout = Class handout
sheet-blank-name = Name
sheet-blank-begun = Begun on
sheet-blank-scraps = Laps I tried on a scrap
sheet-blank-found = How it came out
sheet-blank-squares = Squares I cut
sheet-blank-planned = Planned
sheet-blank-cut = Cut
sheet-blank-finished = My throw, measured
sheet-blank-before = Before the first wash
sheet-blank-after = After washing
sheet-page = Page
sheet-figures = Sizes
sheet-supplies = What you need
sheet-totals = Weight, cloth and time
sheet-prints = Fabrics and their letters
sheet-denims = Denims
sheet-no-print = Letters in a frame name the fabric. A square without a frame is bare denim.
sheet-pieced = ½: pieced of two halves, lapped and stitched.
sheet-wrong-side = Where the wrong side of a denim shows, it is paler, and its twill leans the other way.
sheet-pile = Cutting the pile
sheet-pile-past = Already cut
sheet-pile-other = Other cloth
key-square-places = A square; chalk its place on it.
key-square-numbered = A square, with its number.
key-square-past = A square.
key-spare = S: a spare square.
key-half = ½: half a square; two are lapped into one.
key-binding = A binding strip.
key-avoid = Cut clear of this.
key-rest = The rest.
key-cut = Cut straight across; beside it the strip’s number.
key-cut-past = A cut; beside it the strip’s number.
key-done = Cut already.
key-now = Next to be cut.
sheet-faces = Both faces
sheet-work = The work, stage by stage
sheet-squaring = Squaring up
sheet-laps = Laps that differ from the plan
sheet-scraps = Test scraps
sheet-notes = Notes
sheet-lessons = What was learned
sheet-learned = Learned
sheet-learned-here = Learned on this throw
sheet-corners = The binding at each corner
sheet-story = The story
sheet-left-off = { $n ->
    [one] One photo is left off here: { $most } go on paper at most.
   *[other] { $n } photos are left off here: { $most } go on paper at most.
}
sheet-record = What changed on the way
sheet-more-changes = { $n ->
    [one] one more change
   *[other] { $n } more changes
}
sheet-width = Width
sheet-height = Height
sheet-trimmed = Done
sheet-part = part
sheet-ticked = A box with a tick was done when this was printed. The numbers over the boxes are the numbers of the steps.
sheet-by-hand = Write each measure in before you trim.
sheet-caution = Caution
sheet-cautions = Take care
sheet-order = In this order
sheet-columns-steps = Step
sheet-cut-alike = Cut alike
sheet-missing = The printed letters lack these characters, which stand as empty boxes:
sheet-mirrored = Mirrored: this is how it looks when the throw is turned over like a page. The numbers of the columns are those of the front.
sheet-spares = Spare squares
sheet-spoilt = Squares spoilt
sheet-differs = not all the same
sheet-count = { $all ->
    [one] { $done ->
        [0] 1 to do
       *[other] done
    }
   *[other] { $done ->
        [0] { $all } to do
       *[other] { $done } of { $all } done
    }
}
sheet-of-piece = { $piece }: { $text }
sheet-line-pair = { $first } + { $second }
sheet-run = { $first } to { $last }
sheet-in-order = { $pieces } in the order of their boxes
sheet-value-at = { $value }: { $pieces }
sheet-leaning = { $n ->
    [one] { $pieces } leans and holds { $size }.
   *[other] { $pieces } lean and hold { $size } each.
}
sheet-all-others = all others
sheet-at-lap = { $value } for a lap of { $lap }
sheet-as-lapped = { $values }, as in step { $n }
sheet-mixed = Each square of { $prints } is different: pick ones that are not like those round them.
sheet-laps-see = { $n ->
    [one] One lap differs here; see “Laps that differ from the plan”.
   *[other] { $n } laps differ here; see “Laps that differ from the plan”.
}
sheet-lap-made = Begun with { $lap } instead of { $planned }{ $n ->
    [one] . { $pieces }.
   *[other] , { $n } in all. { $pieces }.
}
sheet-trim-of = Trim each { $kind } to
sheet-scrap-first = Sew a test scrap first, with this needle and thread.
sheet-as-step = As in step { $n } of “{ $stage }”.
sheet-stage-square = Squares
sheet-stage-pair = Pairs
sheet-stage-four = Fours
sheet-stage-larger = Larger joins
sheet-stage-whole = The last join
sheet-stage-binding = Binding
sheet-stage-washing = Washing
sheet-column-cut = cut
sheet-column-lap-halves = lap halves
sheet-column-press-halves = press
sheet-column-cool-halves = cool
sheet-column-stitch-halves = stitch halves
sheet-column-cut-fabric = cut fabric
sheet-column-cover-front = fabric on front
sheet-column-cover-back = fabric on back
sheet-column-press-cover = press
sheet-column-cool-cover = cool
sheet-column-stitch-patch = stitch patch
sheet-column-dot = lap and glue
sheet-column-press-lap = press
sheet-column-cool-lap = cool
sheet-column-pin = pin
sheet-column-stitch = stitch
sheet-column-press-seam = press
sheet-column-press-block = press flat
sheet-column-square-up = square up
sheet-column-trim-edge = press and trim the edge
sheet-column-cut-binding = cut the strips
sheet-column-join-binding = join them
sheet-column-press-binding = fold and press
sheet-column-glue-binding = fold over the edge
sheet-column-stitch-binding = stitch
sheet-column-snip = snip
sheet-column-wash = wash
sheet-column-clip = clip the threads
sheet-then = , { "" }
sheet-order-line = { $what }: { $steps }
sheet-more-prints = { $n ->
    [one] and one more on the making sheet
   *[other] and { $n } more on the making sheet
}
sheet-caution-blade = Close the guard every time. Cut away from you.
sheet-caution-iron = Soleplate and steam burn. Stand it up when you let go.
sheet-caution-blade-and-iron = Put the iron aside before you cut. Close the guard every time.
sheet-caution-needle = No metal in the way. Wheel by hand over thick crossings; eye protection.
sheet-caution-lint = Clean the lint filter before and after each load.
sheet-caution-children = Long fringe is not for a baby’s cot.
figure-between = Lap between fours

## Handing on

hand-throw = The throw itself
hand-throw-what = { $n ->
    [one] Its plan and the one entry on record, in one file.
   *[other] Its plan, everything done so far and all { $n } entries on record, in one file.
} Open it in Lapwork on another device, or keep it as a copy.
hand-throw-save = Save the throw
hand-pictures = Pictures
hand-pictures-what = Both faces, and each piece of cloth with where to cut it, as { $n } drawings (SVG) that any browser shows and prints.
hand-pictures-save = Save all pictures
hand-tables = Tables
hand-tables-what = Squares, joins, cutting, supplies and the record, as { $n } tables (CSV) that any spreadsheet opens.
hand-tables-save = Save all tables
hand-tables-harmless = { $n ->
    [one] One of your names or notes begins like a formula: in the tables an apostrophe stands before its sign, so that no spreadsheet calculates it.
   *[other] { $n } of your names and notes begin like a formula: in the tables an apostrophe stands before the sign, so that no spreadsheet calculates them.
}
handed = Saved: { $file }
handed-many = { $n ->
    [one] Saved: one file in { $folder }
   *[other] Saved: { $n } files in { $folder }
}

## Drawings and tables to take out of the app

draw-size = { $grid }, squares of { $side }; { $size } when done
draw-stitching = This is the stitching side: it lies up at the machine.
draw-turned = Turned over like a page: left and right change places, so the columns count from the right. The bobbin’s thread is on this side.
draw-count = { $n ->
    [one] { $n } square
   *[other] { $n } squares
}
draw-count-wrong = { $n ->
    [one] { $n } square, wrong side out
   *[other] { $n } squares, wrong side out
}
sign-stays = Glued or joined, so it stays as it is
sign-clash = Like fabrics touch
sign-pin = Kept in its place
sign-wrong = Wrong side of the denim
sign-wrong-letter = w
sign-grain = Lengthwise grain runs across
sign-unit = Joined already, goes as one piece
sign-pieced = Pieced of two halves
sign-lap = Lap stitched, with its fringe on either side
draw-key-sewn = Stitched
draw-key-open = Still to be stitched
draw-key-pieced = Pieced of two halves
draw-key-block = Edge of a four
draw-key-fringe = Raw edge, until it is bound
draw-key-binding = Binding
draw-key-cut = Cuts straight across, measured from the hem; strips are numbered in circles.
draw-key-avoid = Cut clear of: { $kinds }
draw-key-half = Half a square; two of them are lapped and stitched into one.
draw-key-strip = Strip for the binding
file-front = front
file-back = back
file-squares = squares
file-covering = covering
file-joins = joins
file-cutting = cutting
file-supplies = supplies
file-record = record
table-yes = yes
table-no = no
column-label = Square
column-row = Row
column-column = Column
column-column-back = Column seen from the back
column-denim = Denim
column-wrong-up = Wrong side to the front
column-front = Fabric on the front
column-back = Fabric on the back
column-stage = Progress
column-pieced = Pieced of two halves
column-letters = Letters
column-name = Name
column-on-front = On the front
column-on-back = On the back
column-total = In all
column-piece = Piece
column-kind = Kind
column-first = First part
column-second = Second part
column-lap-in = Lap (in)
column-lap-mm = Lap (mm)
column-sewn = Stitched
column-heap = On the pile
column-for = For
column-width-in = Widest (in)
column-width-mm = Widest (mm)
column-height-in = Length (in)
column-height-mm = Length (mm)
column-strips = Strips
column-of-halves = Of these, of two halves
column-expected = Squares expected
column-counted = Squares counted
column-item = Item
column-count = Count
column-unit = Of what
column-there = At hand or from the pile
column-short = Short
column-length-in = Length (in)
column-length-mm = Length (mm)
column-words = In words
column-have = At hand
column-time = When (UTC)
column-entry = Entry
column-done = What was done
column-stands = In effect
unit-squares = squares
unit-strips = strips
unit-spools = spools
unit-bobbins = bobbins
unit-bottles = bottles
## Laying out both faces

share-none = None
share-quarter = A quarter
share-third = A third
share-half = Half
wishes-stay = { $units ->
    [0] { $glued ->
        [0] { $pinned ->
            [0] What is joined stays as it is.
           *[other] What is joined or kept in its place stays as it is.
        }
        [one] One square with fabric glued on keeps it.
       *[other] { $glued } squares with fabric glued on keep it.
    }
    [one] One joined piece is not taken apart; fabric that is glued stays on its square.
   *[other] { $units } joined pieces are not taken apart; fabric that is glued stays on its square.
}
wishes-short = { $have ->
    [0] There are no fabric squares; { $wanted } are wanted.
    [one] There is one fabric square; { $wanted } are wanted. It will be laid.
   *[other] There are { $have } fabric squares; { $wanted } are wanted. As many as there are will be laid.
}
wishes-no-prints = There is no fabric in the list yet.
wishes-crowded = On the { $face ->
    [front] front
   *[back] back
}, at most { $most } squares can be covered so that like fabrics touch { $apart ->
    [edges] along no edge
   *[corners] nowhere, not even at corners
}. You want { $wanted }: some will touch.
wishes-on-sewn = Layouts leave what is sewn in as it is. If a face is too plain, choose squares on “Faces”: fabric can be laid on and stitched round there too.
wishes-free = On the front { $front_free ->
    [0] no square is free any more
    [one] one square is still free
   *[other] { $front_free } squares are still free
}: it can have { $front_least } to { $front_most }. On the back { $back_free ->
    [0] no square is free any more
    [one] one square is still free
   *[other] { $back_free } squares are still free
}: it can have { $back_least } to { $back_most }.
wish-covered = Covered
wish-covered-value = front { $front }, back { $back }
wish-apart = Like fabrics touching
wish-apart-none = No like fabrics touch
wish-even-front = Spread on the front
wish-even-back = Spread on the back
wish-even-value = { $how ->
    [even] evenly
    [loose] loosely
   *[clumps] in clumps
}
wish-even-edges = { $value }; kept apart at the edges alone, they can lie more evenly
wish-thick = Thickest crossing
wish-thick-value = { $often ->
    [one] { $n } layers, once
   *[other] { $n } layers, { $often } times
}
wish-thick-met = No crossing thicker than you want
wish-thick-over = { $value }; { $n ->
    [one] one crossing is thicker than { $wished } layers
   *[other] { $n } crossings are thicker than { $wished } layers
}
wish-grain = Against the grain you want
wish-grain-value = { $n ->
    [0] none
   *[other] { $n }
}
wish-mirror = Not mirrored
wish-shade-rows = Out of the order of shades
wish-light-edges = Out of the order of shades
wish-pattern-value = { $n ->
    [0] none
    [one] one square
   *[other] { $n } squares
}
wish-shades-one-denim = cannot be met: every square is of one denim. Let the layout choose the denims, or give some squares another one first.
wish-shades-not-yet = every square is of one denim so far.
wish-shades-no-other = cannot be met: every square is of one denim, and the pile gives no other for those still to cut.
wish-shades-alike = cannot be met: the denims are almost the same shade. Correct their colours, or add a lighter or a darker one.
wish-shades-no-room = cannot be met: the throw has too few rows to show it.
wishes-no-pile = No jeans are on the pile yet: where the wishes need some of each denim, the squares are shared out evenly.
wishes-pile = For the squares still to cut there are, with the spares, { $list }.
wishes-pile-of = { $n } of { $denim }
wishes-by-hand = { $n ->
    [one] One square still to cut has the denim you chose for it.
   *[other] { $n } squares still to cut have the denim you chose for them.
}
wishes-pile-unnamed = { $n } of a denim not named yet
wish-denims = Mixed denims
wish-denims-one = there is only one denim to be had
wish-denims-apart = Like denims side by side
wish-denims-apart-none = No like denims side by side
wish-denims-bands = Each denim together
wish-denims-parts = { $denims } denims in { $parts } groups
wish-pile = From the pile
wish-pile-enough = { $left ->
    [0] nothing left over
    [one] enough, one square left over
   *[other] enough, { $left } squares left over
}
wish-pile-short = { $n ->
    [one] one square more than the pile gives
   *[other] { $n } squares more than the pile gives
}
wish-pile-wasted = the pile lacks { $list }, and { $left } of other denim would be left over
layout-denims = { $n ->
    [one] One square is cut from another denim.
   *[other] { $n } squares are cut from another denim.
}
faces-lost-no-place = { $n ->
    [one] One fabric square has no place on this grid
   *[other] { $n } fabric squares have no place on this grid
}: { $list }.
faces-lost-no-fabric = { $n ->
    [one] One fabric square is not taken over, as there is none of its fabric
   *[other] { $n } fabric squares are not taken over, as there is not enough of their fabric
}: { $list }.
faces-lost-one = { $print } at { $square } ({ $face ->
    [front] front
   *[back] back
})
faces-lost-count = { $n } { $print }
faces-lost-glued = { $n ->
    [one] One of them is glued on and goes with its square.
   *[other] { $n } of them are glued on and go with their squares.
}
faces-lost-by-hand = { $n ->
    [one] One square that you keep in its place, or whose denim you chose, has no place on this grid.
   *[other] { $n } squares that you keep in their places, or whose denim you chose, have no place on this grid.
}
layouts-running = Looking for better ones: { $n } of { $all }
layouts-done = { $n ->
    [one] One layout found
   *[other] { $n } layouts found
}
layout-met = { $met } of { $all } wishes met
layout-spoken = Layout { $letter }: { $met }. { $changes }
layout-changes = { $n ->
    [0] No square changes its fabric.
    [one] One square changes its fabric.
   *[other] { $n } squares change their fabric.
} { $sewn ->
    [0] { $turned ->
        [0] { $joined ->
            [0] { "" }
           *[other] Sewn pieces stay where they are.
        }
        [one] One joined piece is turned.
       *[other] { $turned } joined pieces are turned.
    }
    [one] One joined piece gets another place.
   *[other] { $sewn } joined pieces get other places.
}
stitching-front = Stitching side: stitch with this face up.
stitching-back = Not the stitching side: the bobbin thread lies on this face.
floor-title = { $of ->
    [pairs] Row { $row } of pairs: squares { $first } to { $last }
   *[fours] Row { $row } of fours: squares { $first } to { $last }
}
floor-text = Lay these squares front up, left to right. Compare each with the picture before you go on.
floor-joined = joined to its row
floor-cell = { $piece }. Top: { $up }. Underneath: { $under }. Grain: { $grain ->
    [across] across
   *[other] up and down
}
floor-wrong-side = { $denim }, wrong side
floor-its-wrong-side = its wrong side
floor-its-right-side = its right side
floor-cell-sewn = { $cell }, { $sewn }
covering-front = { $print } on the front
covering-back = { $print } on the back
covering-count = { $done ->
    [0] { $n ->
        [one] one square
       *[other] { $n } squares
    }
   *[other] { $n ->
        [one] one square, glued
       *[other] { $n } squares, { $done } of them glued
    }
}
covering-patch = { $square } (patch { $side })
covering-square = front { $front }, back { $back }
covering-piece = squares { $squares }
covering-piece-sewn = squares { $squares }; sewn
labelling-1 = Write each square’s row and place, such as 3·5, on a slip and pin it to the top left corner of its front; or chalk it there, where no fabric comes over it.
labelling-2 = The slip shows which edge is up and which face is the front, so a square can be picked up and put back.
labelling-3 = Use chalk or a vanishing marker, tried on a scrap first. Take the pins out before the iron and the needle come near.
## Handing on

error-merge-strangers = These are not two copies of one throw.
error-merge-strangers-next = Keep both as throws of their own.
error-merge-undecided = Not everything that differs has been decided.
error-merge-undecided-next = Choose a side wherever the two differ, then merge them.
error-merge-misfit = The two copies cannot be merged: a step of one would no longer follow.
error-merge-misfit-next = Both are untouched. Keep both, and go on with one of them.
error-other-brought = Another file was opened in the meantime, so nothing was done.
error-other-brought-next = Look at that one first, or open this one again.
error-nothing-brought = No file has been opened.
error-nothing-brought-next = Choose a throw file first.

## A throw that is brought

bring-found = Another program changed this throw’s file. Nothing is lost; do your last step again afterwards.
bring-found-details = While your throw was open, another program put this file in the place of its own. Your throw is back in its place; both files are kept beside it as { $here } and { $brought }.
bring-new = A throw for your shelf
bring-new-what = No copy of it is here yet.
bring-add = Put it on the shelf
bring-same = You have this already
bring-same-what = The file and the throw here are the same, step for step. Nothing needs to be done.
bring-torn = { $bytes ->
    [one] The last byte of the file cannot be read, so it is left out. Most likely the file was cut off on its way. What follows is about the rest.
   *[other] The last { $bytes } bytes of the file cannot be read, so they are left out. Most likely the file was cut off on its way. What follows is about the rest.
}
bring-fine = Leave it as it is
bring-here-more = You have this already, and more
bring-here-more-what = { $n ->
    [one] The throw here has everything in the file and one step more.
   *[other] The throw here has everything in the file and { $n } steps more.
}
bring-more = A newer copy of a throw here
bring-more-what = { $n ->
    [one] The file has everything the throw here has, and one step more.
   *[other] The file has everything the throw here has, and { $n } steps more.
}
bring-take-more = { $n ->
    [one] Take the copy with more (one more step)
   *[other] Take the copy with more ({ $n } more steps)
}
bring-apart = Two copies with different steps
bring-apart-what = Only here: { $here ->
    [one] one step
   *[other] { $here } steps
}. Only in the file: { $brought ->
    [one] one step
   *[other] { $brought } steps
}. What came before is the same in both.
bring-conflicts = { $n ->
    [0] They do not contradict each other: everything in both can be kept.
    [one] In one place they contradict each other: choose which to keep there. The steps listed on the other side are dropped; all that is not listed is kept.
   *[other] In { $n } places they contradict each other: choose which to keep in each. The steps listed on the other side are dropped; all that is not listed is kept.
}
bring-only = Only on this side, and lost if you choose the other: { $list }
bring-alike = Both read alike; they differ in details that are not shown here.
bring-more-squares = { $n ->
    [one] and one more square
   *[other] and { $n } more squares
}
bring-stock = { $name } ({ $n } at hand)
bring-unmergeable = They cannot be merged.
bring-merge = Merge them
bring-both = Keep both
bring-keep-here = Keep what is here
bring-copy-here = On this device
bring-copy-brought = In the file
bring-steps = { $n ->
    [one] one entry on record
   *[other] { $n } entries on record
}
bring-copy-name = { $name } (copy)
copy-none = “{ $name }” is in this browser only. Save a copy somewhere else, in case the browser clears its storage.
copy-old = Much of “{ $name }” is in this browser only. Save a new copy somewhere else, in case the browser clears its storage.
kept-copies = { $n ->
    [one] 1 copy from a merge is kept beside it ({ $size } KB).
   *[other] { $n } copies from merges are kept beside it ({ $size } KB).
}
taken-added = On the shelf: { $name }
taken-both = Both are on the shelf; the other is called { $name }
taken-brought = The copy with more steps is on the shelf. The file as it was here is kept beside it as { $copy }
taken-here = Nothing was changed.
taken-merged = Merged. Both files as they were are kept beside it as { $here } and { $brought }

# ── What comes from outside ──
error-file-absurd = Line { $line } of this throw file says something impossible, such as far more squares than any throw has.
error-file-too-much = This throw file holds far more work than any throw: by line { $line } it would take Lapwork minutes to read it.
error-file-too-much-next = Nothing of it was taken in, and it is left untouched. Ask whoever gave it to you for another copy.
error-file-absurd-next = Nothing of it was taken in, and it is left untouched. Ask whoever gave it to you for another copy.
error-file-unknown = Line { $line } of this throw file holds something this Lapwork does not know.
error-file-unknown-next = Nothing of it was taken in, and it is left untouched. Open it with the Lapwork that wrote it.
error-file-beyond = Line { $line } of this throw file gives { $figure } for “{ $field }”, far beyond anything a throw has.
error-file-beyond-next = Nothing of it was taken in, and it is left untouched. Ask whoever gave it to you for another copy, or open a copy you have kept.
error-beyond = A figure in this step is far beyond anything a throw has: { $figure } for “{ $field }”.
error-beyond-next = Type it again in inches or millimetres.

## Story, photos, and making again

did-note-next = For next time: { $text }
did-picture = Photo put into the story
did-picture-words = Photo put into the story: { $words }
did-unpicture = Photo taken out of the story
did-begin-after = Begun: { $name }, { $grid }, after { $after }
error-caption = The words under a photo may have { $most } letters at most.
error-caption-next = Write fewer here; a note can say more.
error-pictured-already = That photo is in the story already.
error-pictured-already-next = Choose another, or take that one out of the story first.
error-photo = No such photo is in the story, or it holds { $most } photos already.
error-photo-next = Look at the story again. If it is full, take a photo out first.
story-lang = en
story-about = { $grid }, { $side } squares, finished { $size }
story-made = { $list }.
story-turn = On the way
story-note = Note
story-next = For next time
story-photo = Photo
story-mishap = Mishap
story-no-photo = This photo is no longer on the device.
made-cut = { $pieces } cut
made-cover-front = { $pieces } covered on the front
made-cover-back = { $pieces } covered on the back
made-stitch = { $pieces } stitched
made-square-up = { $pieces } squared up
made-stitch-binding = binding stitched
made-wash = { $n ->
    [one] washed once
   *[other] washed { $n } times
}
lessons-from = Learned from { $name }
lesson-scrap = On a scrap, a lap of { $lap } was found right.
lesson-drift = { $n } measured fours came out { $off } for each join, on average.
lesson-whole = Finished, it measured { $size }; planned { $planned }.
lesson-wash = { $n ->
    [one] One wash changed it by { $across } % across and { $down } % down (ISO 5077).
   *[other] { $n } washes changed it by { $across } % across and { $down } % down (ISO 5077).
}
lesson-spoilt = { $n ->
    [one] One square was spoilt: { $why }.
   *[other] { $n } squares were spoilt: { $why }.
}
lesson-more-front = { $n ->
    [one] Once cutting had begun, fabric was added to one more square of the front.
   *[other] Once cutting had begun, fabric was added to { $n } more squares of the front.
}
lesson-more-back = { $n ->
    [one] Once cutting had begun, fabric was added to one more square of the back.
   *[other] Once cutting had begun, fabric was added to { $n } more squares of the back.
}
lesson-paces = { $n ->
    [one] Your pace at one step is known, and the time left is worked out from it.
   *[other] Your pace at { $n } steps is known, and the time left is worked out from it.
}
lesson-pace = { $minutes ->
    [half] It took you about half a minute each.
    [one] It took you about a minute each.
   *[other] It took you about { $minutes } minutes each.
}
drift-before = On { $name }, { $n } measured fours came out { $off } for each join, on average. Measure five here to see how this throw goes.
again-name = { $name }, again


## How things are put one after another, and how lengths are typed

list-short = { $before }, { $next }
list-long = { $before }; { $next }
list-and = { $before } and { $next }
sentences = { $before } { $next }
told = { $what }: { $how }
times = { $n } × { $what }
example-inch = 9 1/2 in
example-metric = 241 mm
# Words taken for a unit besides its sign, with commas between.
unit-typed-in = inch, inches
unit-typed-ft = foot, feet
unit-typed-yd = yard, yards
unit-typed-mm = millimetre, millimetres
unit-typed-cm = centimetre, centimetres
unit-typed-m = metre, metres

## The demo throw, and what a new throw begins with

demo-name = Window-seat throw
demo-fabric-1 = Rosehip
demo-fabric-2 = Barley
demo-fabric-3 = Moss
demo-fabric-4 = Harbour
demo-denim-1 = Dark jeans
demo-denim-2 = Faded jeans
demo-garment-1 = Dark work jeans
demo-garment-2 = Faded garden jeans
demo-note-leg = Left leg of the faded pair is thin at the knee.
demo-note-four = This one stretched at the end of the seam.

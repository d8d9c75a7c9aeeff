// Made from the Rust types by tests/tests/types.rs. Do not edit.
// Lengths are whole numbers of nanometres; the window only passes them on.

export type AgainView = { 
/**
 * A name to begin with.
 */
name: string, 
/**
 * The plan as typed fields.
 */
draft: PlanDraft, 
/**
 * The fabrics.
 */
prints: Array<Print>, 
/**
 * The denims.
 */
denims: Array<Denim>, 
/**
 * What was learned.
 */
lessons: Lessons | null, };

export type Apart = "free" | "edges" | "corners";

export type BenchCell = { 
/**
 * Its place.
 */
piece: Rect, 
/**
 * Short label.
 */
label: string, 
/**
 * How far it is.
 */
stage: SquareStage, 
/**
 * The square and its stage in words.
 */
spoken: string, };

export type BenchView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Squares across.
 */
across: number, 
/**
 * Squares down.
 */
down: number, 
/**
 * The squares.
 */
cells: Array<BenchCell>, 
/**
 * The key.
 */
key: Array<StageKey>, 
/**
 * The counts.
 */
tallies: Array<Tally>, 
/**
 * Spare squares at hand.
 */
spares: number, 
/**
 * Spoilt squares, in words.
 */
losses: string, 
/**
 * The piece chosen, and those it belongs to.
 */
chosen: Array<PieceCard>, };

export type Binding = { 
/**
 * Cut width of the strip; what shows of it on each face is [`crate::cloth::bound`].
 */
strip: Length, 
/**
 * The longest strip the cloth gives.
 */
longest: Length, 
/**
 * Extra length to finish with.
 */
tail: Length, };

export type Button = { 
/**
 * Its words.
 */
label: string, 
/**
 * What it asks for.
 */
action: Command, };

export type Card = { 
/**
 * The task.
 */
task: Task, 
/**
 * To what kind of piece.
 */
kind: Kind, 
/**
 * Where it is done.
 */
station: Station, 
/**
 * The place's name.
 */
station_name: string, 
/**
 * What to do.
 */
title: string, 
/**
 * The current piece.
 */
piece: Rect, 
/**
 * Which piece, short.
 */
which: string, 
/**
 * Which piece, spoken.
 */
which_spoken: string, 
/**
 * How many pieces of the sitting it is the first of, in words; none where it is the only one.
 */
together: string | null, 
/**
 * The figures that matter now.
 */
figures: Array<Figure>, 
/**
 * How, a sentence each.
 */
how: Array<string>, 
/**
 * How many remain, in words.
 */
remain: string, 
/**
 * The caution, if the work can hurt.
 */
caution: CautionNote | null, 
/**
 * What must be opened before this piece is worked on.
 */
open: OpenFirst | null, 
/**
 * The step drawn.
 */
picture: Picture, 
/**
 * Its moves drawn one after another, where the step has such.
 */
moves: Array<Move>, 
/**
 * The buttons, the usual one first.
 */
ticks: Array<Button>, 
/**
 * When it began to cool, in milliseconds since 1970.
 */
cool_from: number | null, 
/**
 * When it will have cooled, in milliseconds since 1970.
 */
cool_at: number | null, 
/**
 * Measuring comes first: the block was not measured yet.
 */
measure_first: boolean, 
/**
 * The block to measure, where measuring makes sense now.
 */
measure: Rect | null, 
/**
 * The whole can be measured now, as before a wash.
 */
measure_whole: boolean, 
/**
 * The piece of the pile to be cut up next, where squares are cut.
 */
cut_next: CutNext | null, 
/**
 * The piece that may be off, where it can be said here.
 */
off: Rect | null, 
/**
 * By its measures it is off: what can be done about that comes before the tick.
 */
off_first: boolean, 
/**
 * What was learned of this step on the throw before.
 */
lessons: Array<string>, 
/**
 * What was written down at this step.
 */
notes: Array<string>, };

export type Caution = "blade" | "iron" | "blade-and-iron" | "needle" | "lint" | "children";

export type CautionNote = { 
/**
 * Which.
 */
caution: Caution, 
/**
 * In a few words.
 */
title: string, 
/**
 * In full.
 */
text: string, };

export type Choice<T> = { 
/**
 * What.
 */
value: T, 
/**
 * In words.
 */
label: string, };

export type ClothEdges = { 
/**
 * Off each cut edge.
 */
cut: Length, 
/**
 * Off each selvedge.
 */
selvedge: Length, 
/**
 * How many of the two long sides are selvedges: of cloth off the roll both, of a fat
 * quarter one, which is taken for the left.
 */
selvedges: number, };

export type ClothOffer = { 
/**
 * What it is called.
 */
label: string, 
/**
 * Its width; empty where every piece is another.
 */
width: string, 
/**
 * Its length.
 */
length: string, 
/**
 * Trimmed off each cut edge.
 */
cut: string, 
/**
 * Trimmed off each selvedge.
 */
selvedge: string, 
/**
 * How many of its sides are selvedges.
 */
selvedges: number, };

export type Command = { "do": "begin", 
/**
 * Its name.
 */
name: string, 
/**
 * What is to be made.
 */
plan: Plan, 
/**
 * Fabrics for covering.
 */
prints: Array<Print>, 
/**
 * The denims.
 */
denims: Array<Denim>, } | { "do": "rename", 
/**
 * The new name.
 */
name: string, } | { "do": "archive", 
/**
 * Put away.
 */
archived: boolean, } | { "do": "change-plan", 
/**
 * The new plan.
 */
plan: Plan, } | { "do": "set-face", 
/**
 * The squares.
 */
pieces: Array<Rect>, 
/**
 * Which face.
 */
face: Face, 
/**
 * The print, or none for bare denim.
 */
print: number | null, 
/**
 * Also onto squares that are sewn in: there it is trimmed until it lies clear of the laps,
 * glued and stitched round.
 */
laid_on: boolean, } | { "do": "set-denim", 
/**
 * The squares.
 */
pieces: Array<Rect>, 
/**
 * The denim.
 */
denim: number, 
/**
 * Wrong side to the front.
 */
wrong_side_up: boolean, } | { "do": "share-denims" } | { "do": "lay-out", 
/**
 * How the faces are to look.
 */
wishes: Wishes, 
/**
 * What goes where.
 */
layout: Layout, } | { "do": "wish", 
/**
 * How.
 */
wishes: Wishes, } | { "do": "turn", 
/**
 * A loose square, or a joined piece not joined to others.
 */
piece: Rect, 
/**
 * Quarters, clockwise.
 */
quarters: number, } | { "do": "flip", 
/**
 * The squares.
 */
pieces: Array<Rect>, } | { "do": "pin", 
/**
 * The squares.
 */
pieces: Array<Rect>, 
/**
 * Keep.
 */
pinned: boolean, } | { "do": "set-cloth", 
/**
 * Fabrics for covering.
 */
prints: Array<Print>, 
/**
 * The denims.
 */
denims: Array<Denim>, } | { "do": "tick", 
/**
 * The task.
 */
task: Task, 
/**
 * The pieces it was done to.
 */
pieces: Array<Rect>, } | { "do": "tick-next", 
/**
 * The task.
 */
task: Task, 
/**
 * To pieces of this kind.
 */
kind: Kind, 
/**
 * How many.
 */
count: Count, } | { "do": "tick-sitting", 
/**
 * The tasks, in their order.
 */
tasks: Array<Task>, 
/**
 * The pieces they were done to.
 */
pieces: Array<Rect>, } | { "do": "use-spares", 
/**
 * The places.
 */
pieces: Array<Rect>, 
/**
 * The denim of the spares; the places change to it. Where it is left out, spares of the
 * places' own denim are taken, or of a denim that was never said.
 */
denim?: number, } | { "do": "count-spares", 
/**
 * How many.
 */
spares: Count, } | { "do": "measure", 
/**
 * The block.
 */
piece: Rect, 
/**
 * Its width, in nanometres.
 */
width: Length, 
/**
 * Its height, in nanometres.
 */
height: Length, } | { "do": "measure-outline", 
/**
 * The block.
 */
piece: Rect, 
/**
 * Its sides and diagonals.
 */
measures: Measures, } | { "do": "measure-whole", 
/**
 * Its width, in nanometres.
 */
width: Length, 
/**
 * Its height, in nanometres.
 */
height: Length, } | { "do": "choose-trim", 
/**
 * The size, in nanometres.
 */
trim: Length, 
/**
 * The distance between the marks of the ruler that the laps must lie on. Where it is left
 * out, the coarsest ruler is taken on which the size and the plan's lap lie.
 */
step?: Length, } | { "do": "mark-laps", 
/**
 * The two pieces and their lap in nanometres; none for the plan's.
 */
laps: Array<[Rect, Rect, Length | null]>, } | { "do": "unpick", 
/**
 * The joined pieces.
 */
pieces: Array<Rect>, 
/**
 * The lap to sew it with next time, if not the plan's.
 */
lap: Length | null, } | { "do": "replace", 
/**
 * The square.
 */
piece: Rect, 
/**
 * What happened.
 */
why: Mishap, 
/**
 * With a spare; else one is to be cut, or comes from another place.
 */
spare: boolean, 
/**
 * Of this denim, to which the place changes; else of its own.
 */
denim?: number, 
/**
 * With the square of this place, which is cut and lies loose; the place is then to be
 * cut again.
 */
from?: Rect, } | { "do": "patch", 
/**
 * The square.
 */
piece: Rect, 
/**
 * Which face.
 */
face: Face, 
/**
 * The print.
 */
print: number, 
/**
 * What happened.
 */
why: Mishap, } | { "do": "set-aside", 
/**
 * The block.
 */
piece: Rect, } | { "do": "swap", 
/**
 * One.
 */
a: Rect, 
/**
 * The other.
 */
b: Rect, } | { "do": "spoil", 
/**
 * The square.
 */
piece: Rect, 
/**
 * What happened.
 */
why: Mishap, } | { "do": "add-garment", 
/**
 * Which.
 */
kind: GarmentKind, 
/**
 * How large; left out where she will measure.
 */
size?: GarmentSize, 
/**
 * How its knees are.
 */
knees?: Knees, 
/**
 * The outline begins in round figures of this system; inches where it is not said.
 */
system?: System, 
/**
 * What it is for.
 */
makes: Use, 
/**
 * What it is called.
 */
name: string, } | { "do": "add-cloth", 
/**
 * Its usable width, in nanometres.
 */
width: Length, 
/**
 * Its length.
 */
length: Length, 
/**
 * What is trimmed off its edges; nothing where it is not said.
 */
edges?: ClothEdges, 
/**
 * What it is for.
 */
makes: Use, 
/**
 * What it is called.
 */
name: string, } | { "do": "add-pack", 
/**
 * Their side, in nanometres.
 */
side: Length, 
/**
 * How many, counted.
 */
count: Count, 
/**
 * What they are for.
 */
makes: Use, 
/**
 * Each of them is another: the fabric they are for is such from now on.
 */
mixed?: boolean, 
/**
 * What they are called.
 */
name: string, } | { "do": "add-all", 
/**
 * Garments, cloth and packs.
 */
heaps: Array<Command>, } | { "do": "set-piece", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * Its outline and zones.
 */
outline: Piece, } | { "do": "add-part", 
/**
 * The heap.
 */
n: number, 
/**
 * Which: a pocket or a waistband.
 */
part: GarmentPart, } | { "do": "mirror-piece", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece it is taken from, counted from 0.
 */
index: number, } | { "do": "worn-said", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, } | { "do": "cut-by", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * How.
 */
way: CutWay, } | { "do": "describe-cloth", 
/**
 * The heap.
 */
n: number, 
/**
 * Its weight as typed, such as `14 oz` or `475 g/m²`.
 */
weight: string, 
/**
 * A bare number is in this system.
 */
system: System, 
/**
 * It stretches.
 */
stretch: boolean, 
/**
 * It was washed before.
 */
washed: boolean, 
/**
 * Cut so much larger, in nanometres.
 */
trimming: Length, 
/**
 * What the heap is for, if that is to change.
 */
makes?: Use, } | { "do": "take-heap", 
/**
 * The heap.
 */
n: number, } | { "do": "cut-piece", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * How many good squares.
 */
squares: Count, 
/**
 * Of these, how many of each strip from the hem up, where some failed.
 */
by_strip?: Array<Count>, 
/**
 * How many of the squares are pieced of two halves, where some are.
 */
pieced?: Count, 
/**
 * How many binding strips, where some were to come.
 */
strips?: Count, 
/**
 * The outline as changed and not kept yet, kept with it.
 */
outline?: Piece, } | { "do": "cut-lines", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * How many lines are done now.
 */
lines: Count, } | { "do": "try-scrap", 
/**
 * The scrap.
 */
scrap: Scrap, } | { "do": "use-scrap", 
/**
 * Which, counted from 0.
 */
scrap: number, } | { "do": "set-plate", 
/**
 * In nanometres.
 */
opening: Length, } | { "do": "gather", 
/**
 * What.
 */
item: Item, 
/**
 * Whether it is at hand.
 */
have: boolean, } | { "do": "note", 
/**
 * The words.
 */
text: string, 
/**
 * The piece it is about.
 */
piece: Rect | null, 
/**
 * The step it is about.
 */
task: Task | null, 
/**
 * For the next throw.
 */
next: boolean, } | { "do": "picture", 
/**
 * The photo, as the shell has named it.
 */
photo: string, 
/**
 * What is said of it; may be empty.
 */
words: string, 
/**
 * The piece it shows.
 */
piece: Rect | null, 
/**
 * The step it shows.
 */
task: Task | null, } | { "do": "unpicture", 
/**
 * The photo.
 */
photo: string, };

export type CommandAnswer = { 
/**
 * How new it is: see [`LookAnswer`].
 */
revision: number, 
/**
 * How the throw stands.
 */
head: Head, 
/**
 * The updated screen, if the query asked for it and it can be shown.
 */
view: View | null, 
/**
 * Why the screen cannot be shown: its piece no longer exists. The command is stored all the
 * same.
 */
problem: Problem | null, };

export type CompareRow = { 
/**
 * What it is.
 */
label: string, 
/**
 * Now.
 */
before: Shown, 
/**
 * After the change.
 */
after: Shown, 
/**
 * Whether they differ.
 */
differs: boolean, };

export type ConflictRow = { 
/**
 * On this device, a step each.
 */
here: Array<string>, 
/**
 * In the file, a step each.
 */
brought: Array<string>, };

export type CopyRow = { 
/**
 * Where it is.
 */
label: string, 
/**
 * What it calls the throw.
 */
name: string, 
/**
 * How many steps it has.
 */
said: string, 
/**
 * When it was last worked on, in milliseconds since 1970.
 */
at: number, };

export type Count = number;

export type Cover = { 
/**
 * Print on the front, if any.
 */
front: number | null, 
/**
 * Print on the back, if any.
 */
back: number | null, 
/**
 * The denim in the middle.
 */
denim: number, 
/**
 * The denim's wrong side is to the front.
 */
wrong_side_up: boolean, 
/**
 * Its lengthwise grain lies across, not up and down.
 */
crosswise?: boolean, };

export type CoveringGroup = { 
/**
 * The fabric; none for bare denim.
 */
print: number | null, 
/**
 * `Rosehip on the front`.
 */
title: string, 
/**
 * How many, and how many of them are glued.
 */
count: string, 
/**
 * The labels of those still to be glued.
 */
open: Array<string>, 
/**
 * The labels of those that are done.
 */
done: Array<string>, };

export type CoveringLine = { 
/**
 * The label.
 */
label: string, 
/**
 * What it is.
 */
text: string, };

export type CoveringView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * How to label the real squares.
 */
labelling: Array<string>, 
/**
 * By fabric and face.
 */
groups: Array<CoveringGroup>, 
/**
 * The fabrics.
 */
prints: Array<Swatch>, 
/**
 * Square by square.
 */
squares: Array<CoveringLine>, 
/**
 * Pairs and fours by label, with their squares.
 */
pieces: Array<CoveringLine>, };

export type CutNext = { 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * What is said to go there.
 */
label: string, };

export type CutRow = { 
/**
 * What it is.
 */
title: string, 
/**
 * How it is cut.
 */
text: string, 
/**
 * What is chalked on its squares; nothing where they have no places.
 */
chalk: string | null, 
/**
 * Whole squares of this line.
 */
squares: number, 
/**
 * Halves of squares.
 */
halves: number, 
/**
 * It is done.
 */
done: boolean, 
/**
 * It is the next one.
 */
now: boolean, 
/**
 * Takes it off the list, or puts it back; none once the piece is cut up.
 */
tick: Button | null, };

export type CutWay = { 
/**
 * Strips are measured from the upper edge too.
 */
both_edges?: boolean, 
/**
 * The piece lies a quarter turned.
 */
turned?: boolean, 
/**
 * What the squares leave is cut into halves, of which two are lapped into one square.
 */
pieced?: boolean, };

export type Denim = { 
/**
 * What the maker calls it.
 */
name: string, 
/**
 * Its colour for the picture, `#rrggbb`.
 */
colour: string, };

export type DenimWish = "kept" | "any" | "apart" | "bands";

export type DraftAfter = { 
/**
 * The older throw.
 */
id: string, 
/**
 * The fabrics.
 */
prints: Array<Print>, 
/**
 * The denims.
 */
denims: Array<Denim>, };

export type Drag = { 
/**
 * Which station, from the hem up, counted from 0.
 */
station: number, 
/**
 * Where it is now.
 */
x: number, 
/**
 * Where it is now.
 */
y: number, 
/**
 * It is still held: only this piece is laid out, with so many binding strips as were shown
 * before. Where it is left out, so is the rest of the pile, which decides how many strips and
 * which places are the piece's.
 */
held_strips?: Count, };

export type DrawnCloth = { 
/**
 * Its colour, `#rrggbb`.
 */
colour: string, 
/**
 * Its texture; none where it is plain.
 */
tile: Tile | null, 
/**
 * A photo of it, which fills two repeats and lies over the texture where it is there.
 */
photo?: string, };

export type Export = { "export": "throw" } | { "export": "pictures" } | { "export": "tables" } | { "export": "story", 
/**
 * The time zone whose days are written.
 */
zone: ZoneName, };

export type ExportButton = { 
/**
 * Its words.
 */
label: string, 
/**
 * What it exports.
 */
export: Export, };

export type ExportSection = { 
/**
 * Stable name, for programs.
 */
key: string, 
/**
 * Its title.
 */
title: string, 
/**
 * What it is for, a line each.
 */
said: Array<string>, 
/**
 * What to press.
 */
buttons: Array<ExportButton>, };

export type ExportView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Section by section.
 */
sections: Array<ExportSection>, 
/**
 * How a sheet is printed unless the maker says otherwise.
 */
print: PrintOrder, };

export type Exported = { 
/**
 * What to say; none where the maker thought better of it.
 */
said: string | null, };

export type Face = "front" | "back";

export type FaceCell = { 
/**
 * Its place as seen from the front.
 */
piece: Rect, 
/**
 * Column in the picture of this face, from the left.
 */
x: number, 
/**
 * Row in the picture.
 */
y: number, 
/**
 * Pinned to its place.
 */
pinned: boolean, 
/**
 * The loose piece it belongs to: itself, a pair or a four; none once it is joined to more.
 */
unit: Rect | null, 
/**
 * It is sewn in and bare on this face: fabric can only be laid on it.
 */
sewn_bare: boolean, 
/**
 * No fabric can be chosen for it on this face: its own is glued, or it is sewn in.
 */
fixed: boolean, 
/**
 * The fewest quarters that piece may be turned by; 0 where it may not.
 */
turn: number, 
/**
 * Its label.
 */
label: string, 
/**
 * The square in words.
 */
spoken: string, };

export type FacesAsk = { 
/**
 * The question.
 */
title: string, 
/**
 * Why it is asked now.
 */
text: string, 
/**
 * No square gets fabric; it is not asked again.
 */
bare: Button, };

export type FacesView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Which face.
 */
face: Face, 
/**
 * What it is called, and that the back is mirrored.
 */
title: string, 
/**
 * Squares across.
 */
across: number, 
/**
 * Squares down.
 */
down: number, 
/**
 * The squares.
 */
cells: Array<FaceCell>, 
/**
 * What is painted, a square to a unit.
 */
picture: Picture, 
/**
 * What the signs in it mean, those that are there.
 */
signs: Array<InkKey>, 
/**
 * The fabrics.
 */
prints: Array<Swatch>, 
/**
 * The denims.
 */
denims: Array<Denim>, 
/**
 * Remarks about it, a line each.
 */
lines: Array<string>, 
/**
 * How well the wishes are met.
 */
wishes: Array<WishLine>, 
/**
 * How fabric comes onto squares that are sewn in, in words; none where they are too small.
 */
laid_on: string | null, 
/**
 * Whether this face is the stitching side, in words.
 */
stitching: string, 
/**
 * Squares covered on the front and on the back.
 */
covered: [number, number], 
/**
 * Squares in all.
 */
squares: number, 
/**
 * The face in words.
 */
spoken: string, };

export type FieldProblem = { 
/**
 * The field of the draft.
 */
field: string, 
/**
 * What is wrong.
 */
problem: Problem, };

export type Figure = { 
/**
 * What it is.
 */
label: string, 
/**
 * The value.
 */
value: Shown, };

export type FloorCell = { 
/**
 * Its place.
 */
piece: Rect, 
/**
 * Its label.
 */
label: string, 
/**
 * The square in words.
 */
spoken: string, };

export type FloorView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Which part, in words.
 */
title: string, 
/**
 * What to do.
 */
text: string, 
/**
 * How the squares lie, a square to a unit.
 */
picture: Picture, 
/**
 * The squares.
 */
cells: Array<FloorCell>, 
/**
 * Which part this is, from 0.
 */
part: number, 
/**
 * Parts there are.
 */
parts: number, };

export type Fraction = "eighth" | "sixteenth" | "thirty-second" | "sixty-fourth";

export type GarmentKind = "mens-jeans" | "womens-jeans" | "childs-jeans" | "jacket-back" | "skirt" | "sheet" | "shirt" | "blouse";

export type GarmentPart = "left-leg" | "right-leg" | "back" | "front" | "sleeve" | "panel" | "pocket" | "waistband" | "sheet" | "cloth";

export type GarmentSize = "small" | "medium" | "large";

export type GatherRow = { 
/**
 * What.
 */
item: Item, 
/**
 * Its name.
 */
label: string, 
/**
 * How much, a line each.
 */
lines: Array<string>, 
/**
 * It is at hand.
 */
have: boolean, };

export type GatherView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The list.
 */
rows: Array<GatherRow>, 
/**
 * Weight, time left and the like.
 */
figures: Array<Figure>, 
/**
 * What there is to say, a sentence each.
 */
said: Array<string>, };

export type Grain = "free" | "one-way" | "by-turns";

export type GridRow = { 
/**
 * Squares across.
 */
across: number, 
/**
 * Squares down.
 */
down: number, 
/**
 * The grid in words.
 */
title: string, 
/**
 * Its finished size.
 */
size: Shown, 
/**
 * What is left over or amiss, and why.
 */
why: Array<string>, };

export type GridWish = { "by": "squares", 
/**
 * How many, as typed.
 */
have: string, } | { "by": "cloth", 
/**
 * Her jeans.
 */
jeans: Array<JeansTyped>, 
/**
 * A pack of fabric squares.
 */
pack: PackTyped | null, 
/**
 * Width, as typed; may be empty.
 */
width: string, 
/**
 * Height, as typed; may be empty.
 */
height: string, } | { "by": "size", 
/**
 * Width, as typed.
 */
width: string, 
/**
 * Height, as typed.
 */
height: string, };

export type GridsView = { 
/**
 * What is wrong with the wish.
 */
problem: Problem | null, 
/**
 * What is wrong with the side of the pack's squares.
 */
pack: Problem | null, 
/**
 * What there is, a sentence each.
 */
said: Array<string>, 
/**
 * What the plan's own grid takes of that, and whether it is enough.
 */
own: Array<string>, 
/**
 * Best first.
 */
grids: Array<GridRow>, };

export type Handle = { 
/**
 * Which station.
 */
station: number, 
/**
 * Where, in the picture's units.
 */
x: number, 
/**
 * Where, in the picture's units.
 */
y: number, };

export type Head = { 
/**
 * The throw's name.
 */
name: string, 
/**
 * Put away.
 */
archived: boolean, 
/**
 * Number of the last entry.
 */
entry: number, 
/**
 * What undo would take back, in words.
 */
undo: string | null, 
/**
 * What redo would do again, in words.
 */
redo: string | null, 
/**
 * Steps done.
 */
done: number, 
/**
 * Steps in all.
 */
all: number, 
/**
 * The two as words.
 */
progress: string, 
/**
 * Where in the work it is.
 */
way: WayView, 
/**
 * When the next of what lies cooling is cool, in milliseconds since 1970; none where nothing
 * cools.
 */
cools_at: number | null, 
/**
 * Finished size as measured, or as now foreseen.
 */
size: Shown, };

export type HeapPiece = { 
/**
 * Counted from 0.
 */
index: number, 
/**
 * Which piece.
 */
label: string, 
/**
 * What it gives or gave, in words.
 */
said: string, 
/**
 * It is cut up and counted.
 */
cut: boolean, 
/**
 * It has an outline that can be shown; a pack has none.
 */
outlined: boolean, };

export type HeapRow = { 
/**
 * Its number.
 */
n: number, 
/**
 * What it is called.
 */
title: string, 
/**
 * What it is for and gives, in words.
 */
said: string, 
/**
 * What it can be for now, with names; nothing where there is no choice.
 */
uses: Array<Choice<Use>>, 
/**
 * Which of them it is for, counted from 0.
 */
makes: number, 
/**
 * Its pieces.
 */
pieces: Array<HeapPiece>, 
/**
 * Weight of its cloth, with its unit.
 */
weight: string, 
/**
 * It stretches.
 */
stretch: boolean, 
/**
 * It was washed before.
 */
washed: boolean, 
/**
 * Squares are cut so much larger, with its unit.
 */
trimming: string, 
/**
 * Lay further parts of it flat as pieces of their own.
 */
parts: Array<Button>, 
/**
 * Takes it off the pile, while nothing of it is cut.
 */
take: Button | null, };

export type Hello = { 
/**
 * The window's own words, by key.
 */
words: Record<WordKey, string>, 
/**
 * Preferences.
 */
prefs: Prefs, 
/**
 * The code of the language that is spoken.
 */
language: string, 
/**
 * Its decimal sign.
 */
point: string, 
/**
 * All languages, to choose from.
 */
languages: Array<LanguageName>, 
/**
 * The shelf.
 */
shelf: ShelfView, 
/**
 * A plan to begin with.
 */
draft: PlanDraft, 
/**
 * The fabrics a new throw begins with.
 */
prints: Array<Print>, 
/**
 * The denims a new throw begins with.
 */
denims: Array<Denim>, 
/**
 * What she may have, to be said before the first plan.
 */
starts: StartOffers, 
/**
 * The textures of cloth and the hatchings, for every picture.
 */
tiles: Array<TileMarks>, 
/**
 * The textures of denims in the order of a list, over and over.
 */
twills: Array<Tile>, 
/**
 * Version of the app.
 */
version: string, 
/**
 * Where the throws are kept.
 */
folder: string, 
/**
 * What went wrong at the start, if anything.
 */
problem: Problem | null, };

export type HistoryRow = { 
/**
 * Number of the entry.
 */
n: number, 
/**
 * When, in milliseconds since 1970.
 */
at: number, 
/**
 * In plain words.
 */
text: string, 
/**
 * Whether it still stands.
 */
stands: boolean, };

export type HistoryView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The lines.
 */
rows: Array<HistoryRow>, 
/**
 * Whether older ones are left out.
 */
more: boolean, };

export type Hold = "start" | "middle" | "end";

export type HoldRow = { 
/**
 * The lap between blocks.
 */
lap: Shown, 
/**
 * The finished size with it.
 */
finished: Shown, 
/**
 * How far off, and the fringe it leaves, a sentence each.
 */
lines: Array<string>, 
/**
 * Choose it; none where it is the lap already.
 */
choose: Button | null, };

export type HoldView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * What is wrong with what was typed, by field (`width`, `height`).
 */
faults: Array<FieldProblem>, 
/**
 * Best first.
 */
rows: Array<HoldRow>, 
/**
 * How many joins remain, in words.
 */
said: string, };

export type ImportButton = { 
/**
 * Its words.
 */
label: string, 
/**
 * What it asks for.
 */
choice: ImportChoice, };

export type ImportChoice = { "choice": "add" } | { "choice": "keep-both" } | { "choice": "take-brought" } | { "choice": "keep-here" } | { "choice": "merge", 
/**
 * For each conflict whether the imported side is kept.
 */
brought: Array<boolean>, };

export type ImportView = { 
/**
 * The number of the file, which the choice refers to.
 */
file: number, 
/**
 * What it is.
 */
title: string, 
/**
 * What is in which, a line each.
 */
said: Array<string>, 
/**
 * What else there is to know, for who asks.
 */
details: string | null, 
/**
 * The copies.
 */
copies: Array<CopyRow>, 
/**
 * What is to be decided before they become one.
 */
conflicts: Array<ConflictRow>, 
/**
 * What can be done, the usual first.
 */
buttons: Array<ImportButton>, };

export type Imported = { 
/**
 * The throw to open, if there is one.
 */
id: string | null, 
/**
 * What to say.
 */
said: string, 
/**
 * The shelf now.
 */
shelf: ShelfView, };

export type Ink = "denim" | "blank" | "now" | "next" | "done" | "lap" | "stitch" | "waste" | "cut" | "rule" | "amiss" | "cloth" | "veiled" | "outline" | "edge" | "block" | "sewn" | "fringe" | "threads" | "hidden" | "fray" | "needle" | "binding" | "leader" | "unit" | "stays" | "pin" | "clash" | "grain" | "ring" | "beneath" | "words" | "title" | "letters" | "bare" | "wrong" | "number";

export type InkKey = { 
/**
 * The mark by itself.
 */
picture: Picture, 
/**
 * In words.
 */
label: string, };

export type Item = { "item": "denim" } | { "item": "fabric", 
/**
 * The print, counted from 0.
 */
print: number, } | { "item": "binding" } | { "item": "thread" } | { "item": "bobbins" } | { "item": "needles" } | { "item": "glue" } | { "item": "marker" } | { "item": "cutter" } | { "item": "care" } | { "item": "press" } | { "item": "clips" } | { "item": "ripper" };

export type JeansTyped = { 
/**
 * How many pairs.
 */
pairs: number, 
/**
 * Which.
 */
kind: GarmentKind, 
/**
 * How large; none where she will measure.
 */
size: GarmentSize | null, 
/**
 * How their knees are.
 */
knees: Knees, };

export type JoinOrder = "rows" | "columns" | "doubling";

export type Joining = "lapped" | "seamed" | "exposed";

export type Kind = "square" | "pair" | "four" | "row" | "column" | "part" | "whole";

export type Knees = "unknown" | "whole" | "torn";

export type LanguageName = { 
/**
 * Its code.
 */
code: string, 
/**
 * What it is called by those who speak it.
 */
name: string, };

export type LapColumn = { 
/**
 * What it is called.
 */
title: string, 
/**
 * The join cut through, to scale.
 */
picture: Picture, 
/**
 * Fringe, layers, thickness, clearance.
 */
figures: Array<Figure>, 
/**
 * What the maker should hear.
 */
advice: Array<Problem>, };

export type Layout = { 
/**
 * Pieces that change places, from where to where: each place once on either side.
 */
moves: Array<[Rect, Rect]>, 
/**
 * Pieces, where they lie then, and how many quarters clockwise they are turned,
 * as seen from the front.
 */
turns: Array<[Rect, number]>, 
/**
 * Squares whose faces change after that.
 */
faces: Array<[Rect, Cover]>, };

export type LayoutCard = { 
/**
 * Which of the several.
 */
letter: string, 
/**
 * The front, with rings round what would change.
 */
front: Picture, 
/**
 * The back as it looks turned over, likewise.
 */
back: Picture, 
/**
 * Something would change.
 */
changed: boolean, 
/**
 * The prints it uses, counted from 0.
 */
used: Array<number>, 
/**
 * How many squares it has of each denim, where there are several, in words.
 */
denims: string | null, 
/**
 * How well it meets the wishes.
 */
lines: Array<WishLine>, 
/**
 * How many of the wishes it meets, in words.
 */
met: string, 
/**
 * It meets all of them.
 */
meets_all: boolean, 
/**
 * What changes if it is taken.
 */
changes: string, 
/**
 * The layout in words.
 */
spoken: string, 
/**
 * Takes it.
 */
action: Command, };

export type Layouts = { 
/**
 * Still at it.
 */
running: boolean, 
/**
 * Rounds done, of all there will be.
 */
rounds: number, 
/**
 * Rounds there will be.
 */
most: number, 
/**
 * How far it is, in words.
 */
said: string, 
/**
 * The fabrics.
 */
prints: Array<Swatch>, 
/**
 * The layouts so far.
 */
cards: Array<LayoutCard>, };

export type Length = number;

export type LessonRow = { 
/**
 * The step it is about, in words.
 */
step: string | null, 
/**
 * In words.
 */
words: string, 
/**
 * Whether the maker wrote it herself.
 */
hers: boolean, };

export type Lessons = { 
/**
 * From which throw.
 */
title: string, 
/**
 * Each in words.
 */
rows: Array<LessonRow>, };

export type Mark = { "mark": "area", 
/**
 * Left edge.
 */
x: number, 
/**
 * Upper edge.
 */
y: number, 
/**
 * Width.
 */
w: number, 
/**
 * Height.
 */
h: number, 
/**
 * What it is.
 */
ink: Ink, 
/**
 * The cloth it is filled with, one of the picture's.
 */
cloth: number | null, 
/**
 * Letters in its middle.
 */
label: string | null, } | { "mark": "line", 
/**
 * Start.
 */
x1: number, 
/**
 * Start.
 */
y1: number, 
/**
 * End.
 */
x2: number, 
/**
 * End.
 */
y2: number, 
/**
 * What it is.
 */
ink: Ink, 
/**
 * With a head at its end.
 */
arrow: boolean, } | { "mark": "shape", 
/**
 * Its outline as SVG 1.1 writes path data, measured from the place.
 */
d: string, 
/**
 * The places; none where the outline starts from the top left of the drawing.
 */
at: Array<[number, number]>, 
/**
 * What it is.
 */
ink: Ink, 
/**
 * The cloth it is filled with, one of the picture's.
 */
cloth: number | null, } | { "mark": "words", 
/**
 * Where they are held.
 */
x: number, 
/**
 * Middle of the words.
 */
y: number, 
/**
 * The words.
 */
text: string, 
/**
 * Height of the letters.
 */
size: number, 
/**
 * What they are.
 */
ink: Ink, 
/**
 * Which end of them is held.
 */
hold: Hold, 
/**
 * Read from below to above.
 */
upright: boolean, } | { "mark": "letters", 
/**
 * The letters.
 */
text: string, 
/**
 * Their height.
 */
size: number, 
/**
 * The middle of each.
 */
at: Array<[number, number]>, 
/**
 * What they are.
 */
ink: Ink, };

export type MeasureView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The block.
 */
piece: Rect, 
/**
 * Which block.
 */
title: string, 
/**
 * What it should be.
 */
target: Figure, 
/**
 * What is wrong with what was typed, by field (`width`, `height`).
 */
faults: Array<FieldProblem>, 
/**
 * The verdict in a sentence or two.
 */
verdict: Array<string>, 
/**
 * Over and under, what to trim from which side, the lap being sewn.
 */
figures: Array<Figure>, 
/**
 * The block with what is cut away.
 */
picture: Picture | null, 
/**
 * Keeps the measure.
 */
keep: Button | null, 
/**
 * The measured blocks so far: count, mean, spread, lap.
 */
summary: Array<Figure>, 
/**
 * What they say, in words.
 */
summary_said: string, 
/**
 * The next block worth measuring.
 */
next: Rect | null, 
/**
 * What is typed is short of the trim size: something is to be done about it.
 */
short: boolean, };

export type Measures = { 
/**
 * The four sides.
 */
sides: Sides, 
/**
 * Top left to bottom right, and top right to bottom left.
 */
diagonals: [Length, Length] | null, };

export type MetricUnit = "mm" | "cm";

export type Mishap = "mis-cut" | "flaw" | "scorched" | "lost";

export type MishapChoice = { 
/**
 * Which.
 */
why: Mishap, 
/**
 * In words.
 */
label: string, };

export type Move = { 
/**
 * What is done, in a sentence.
 */
text: string, 
/**
 * How it looks.
 */
picture: Picture, };

export type OffView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The piece.
 */
piece: Rect, 
/**
 * Which piece.
 */
title: string, 
/**
 * What is known of it, a sentence each.
 */
lines: Array<string>, 
/**
 * The piece drawn, with what is short or over.
 */
picture: Picture | null, 
/**
 * The squares in it, to say which is spoilt; empty for a square.
 */
squares: Array<PieceChoice>, 
/**
 * What may have happened to a square; empty where that is not asked.
 */
mishaps: Array<MishapChoice>, 
/**
 * The mishap chosen.
 */
why: Mishap | null, 
/**
 * It can be measured.
 */
measure: boolean, 
/**
 * What can be done, least trouble first.
 */
ways: Array<RemedyRow>, 
/**
 * Said when there is nothing to do or to choose.
 */
rest: string | null, };

export type Offer = { 
/**
 * The task.
 */
task: Task, 
/**
 * To what kind of piece.
 */
kind: Kind, 
/**
 * Where.
 */
station: Station, 
/**
 * In words.
 */
title: string, 
/**
 * How many, in words.
 */
count: string, 
/**
 * Whether it is still cooling.
 */
waiting: boolean, };

export type OpenFirst = { 
/**
 * How many, and for what.
 */
title: string, 
/**
 * Which and how much of each, a sentence each.
 */
lines: Array<string>, 
/**
 * Where they lie.
 */
picture: Picture, };

export type OtherHalf = { 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * Gives it this outline, mirrored; none where that would change nothing, or cannot be.
 */
mirror: Button | null, 
/**
 * It took over this outline, and nobody has said where it is worn: what leads there is
 * called this.
 */
unsaid: string | null, };

export type OutlineStation = { 
/**
 * Height above the hem.
 */
at: Length, 
/**
 * Where the left edge is, from the middle line; left of it is less than nothing.
 */
left: Length, 
/**
 * Where the right edge is.
 */
right: Length, };

export type OutlineTyped = { 
/**
 * Top side.
 */
top: string, 
/**
 * Right side.
 */
right: string, 
/**
 * Bottom side.
 */
bottom: string, 
/**
 * Left side.
 */
left: string, 
/**
 * Diagonal from top left to bottom right.
 */
falling: string, 
/**
 * Diagonal from top right to bottom left.
 */
rising: string, };

export type PackTyped = { 
/**
 * Side of one, as typed.
 */
side: string, 
/**
 * How many.
 */
count: number, };

export type Pattern = "free" | "mirror" | "shade-rows" | "light-edges";

export type Picture = { 
/**
 * Width of the drawing.
 */
width: number, 
/**
 * Height of the drawing.
 */
height: number, 
/**
 * The picture in words.
 */
spoken: string, 
/**
 * After how far the figure of a print comes again; other tiles go by it.
 */
repeat: number, 
/**
 * Where a tile begins, from the left and from the top.
 */
from: [number, number], 
/**
 * The cloths that marks are filled with, each once.
 */
cloths: Array<DrawnCloth>, 
/**
 * What is drawn, the first at the bottom.
 */
marks: Array<Mark>, };

export type Piece = { 
/**
 * What it is of.
 */
part: GarmentPart, 
/**
 * Its outline, from the hem up.
 */
stations: Array<OutlineStation>, 
/**
 * Places to keep clear.
 */
zones: Array<Zone>, };

export type PieceCard = { 
/**
 * The piece.
 */
piece: Rect, 
/**
 * What it is and which.
 */
title: string, 
/**
 * How far it is, a line each.
 */
lines: Array<string>, 
/**
 * What can be done to it.
 */
buttons: Array<Button>, 
/**
 * It can be measured now.
 */
measure: boolean, 
/**
 * It may be said to be off.
 */
off: boolean, };

export type PieceChoice = { 
/**
 * The piece.
 */
piece: Rect, 
/**
 * Its name.
 */
label: string, };

export type PieceTyped = { 
/**
 * Its stations, from the hem up.
 */
stations: Array<StationTyped>, 
/**
 * Its zones.
 */
zones: Array<ZoneTyped>, };

export type PileCutView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * Which piece.
 */
title: string, 
/**
 * The fields, each measure with its unit spelled out.
 */
tidy: PieceTyped, 
/**
 * What is wrong, by field (`station-0-at`, `zone-1-from`).
 */
faults: Array<FieldProblem>, 
/**
 * The outline, zones, strips and squares.
 */
picture: Picture | null, 
/**
 * The piece as it lies to be cut, where it is turned for that.
 */
lying: Picture | null, 
/**
 * Points that can be dragged.
 */
handles: Array<Handle>, 
/**
 * Squares, and what is given up by cutting straight across.
 */
figures: Array<Figure>, 
/**
 * The cutting list, in order.
 */
list: Array<CutRow>, 
/**
 * What is left over that is worth keeping.
 */
left: string | null, 
/**
 * All of it came out as expected, in one tap; none once it is cut up, or while the outline
 * was changed and not kept.
 */
all_came: Button | null, 
/**
 * What it is worth knowing of its squares, a sentence each.
 */
said: Array<string>, 
/**
 * What to heed before it is cut, a sentence each.
 */
heeds: Array<string>, 
/**
 * Keeps the outline, where it was changed.
 */
keep: Button | null, 
/**
 * Squares to expect, to begin the count with.
 */
expected: number, 
/**
 * Of these, squares pieced of two halves.
 */
expected_pieced: number, 
/**
 * Binding strips to expect.
 */
expected_strips: number, 
/**
 * Something of it is cut already.
 */
begun: boolean, 
/**
 * It is cut up; so many came out.
 */
counted: number | null, 
/**
 * Kinds of zone.
 */
zones: Array<Choice<ZoneKind>>, 
/**
 * It has no hem: heights are measured from its lower edge.
 */
flat: boolean, 
/**
 * The ways to cut it, the plain one first; nothing where no other gives more.
 */
ways: Array<WayOffer>, 
/**
 * The other half of the pair it is of.
 */
other: OtherHalf | null, 
/**
 * The question where it is worn, for as long as nobody has said it.
 */
worn: WornAsked | null, 
/**
 * The caution at the blade.
 */
caution: CautionNote | null, 
/**
 * What the signs of the picture mean.
 */
key: Array<InkKey>, };

export type PileView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Squares wanted, cut for the throw, still to cut; spares; what the pile still gives.
 */
figures: Array<Figure>, 
/**
 * Whether it is enough, a sentence each.
 */
said: Array<string>, 
/**
 * The heaps.
 */
rows: Array<HeapRow>, 
/**
 * What can be done where it is not enough.
 */
ways: Array<RemedyRow>, 
/**
 * The piece to cut next, where all that is needed is on the pile.
 */
next: CutNext | null, 
/**
 * All squares of the throw are cut, and the pile was begun: the work goes on elsewhere.
 */
all_cut: boolean, 
/**
 * Garments with a starting outline.
 */
kinds: Array<Choice<GarmentKind>>, 
/**
 * Their sizes.
 */
sizes: Array<Choice<GarmentSize>>, 
/**
 * What a heap can be for.
 */
makes: Array<Choice<Use>>, 
/**
 * Lengths of cloth as they are sold, to begin with.
 */
cloths: Array<ClothOffer>, };

export type Plan = { 
/**
 * Side of a square as cut.
 */
side: Length, 
/**
 * The lap, or the seam allowance where the joining is a seam.
 */
lap: Length, 
/**
 * The lap (or allowance) where blocks are joined to one another, if not the same.
 */
between: Length | null, 
/**
 * Squares across.
 */
across: number, 
/**
 * Squares down.
 */
down: number, 
/**
 * How edges are held together.
 */
joining: Joining, 
/**
 * The stitching down a join.
 */
stitch: Stitch, 
/**
 * How long a stitch is; where it is not said, [`USUAL_STITCH_MM`].
 */
stitch_length?: Length, 
/**
 * Least fringe the maker trusts to hold (3 mm; common practice, no source).
 */
least_fringe: Length, 
/**
 * Side the fours are trimmed to, where the maker has settled on one.
 */
trim: Length | null, 
/**
 * The order of the larger joins.
 */
order: JoinOrder, 
/**
 * The strip round the outside.
 */
binding: Binding, 
/**
 * A seam takes up the width of its stitching besides its allowances. It is said of seams alone;
 * where it is not said of them, a throw was begun without that width and keeps its sizes.
 */
stitch_in_seam?: boolean, 
/**
 * Pressing and trimming the whole edge is a step before the binding. Where it is not said, the
 * binding begins without it.
 */
trim_edge?: boolean, 
/**
 * Minutes a pressed piece is left to cool (5; common practice, no source).
 */
cooling_minutes: number, 
/**
 * How many first washes with clipping of threads (3; common practice, no source).
 */
washes: number, };

export type PlanDraft = { 
/**
 * Cut side.
 */
side: string, 
/**
 * Lap or allowance.
 */
lap: string, 
/**
 * Squares across.
 */
across: string, 
/**
 * Squares down.
 */
down: string, 
/**
 * How edges are held together.
 */
joining: Joining, 
/**
 * Which stitch.
 */
stitch: StitchKind, 
/**
 * Twin spacing, distance of two rows, or stitch width.
 */
width: string, 
/**
 * How long a stitch is.
 */
stitch_length: string, 
/**
 * Least fringe.
 */
fringe: string, 
/**
 * Trim size; empty for the natural one.
 */
trim: string, 
/**
 * Lap between blocks; empty for the same lap.
 */
between: string, 
/**
 * Order of the larger joins.
 */
order: JoinOrder, 
/**
 * The whole edge is pressed and trimmed before the binding.
 */
trim_edge: boolean, 
/**
 * Its seams take up the width of their stitching; carried along, there is nothing to choose.
 */
stitch_in_seam?: boolean, 
/**
 * Width of the binding strip.
 */
strip: string, 
/**
 * Longest binding strip.
 */
longest: string, 
/**
 * Tail of the binding.
 */
tail: string, 
/**
 * Minutes to cool.
 */
cooling: string, 
/**
 * Washes.
 */
washes: string, };

export type PlanView = { 
/**
 * Common to all screens, for a throw that has been begun.
 */
head: Head | null, 
/**
 * What was typed, each measure with its unit spelled out.
 */
tidy: PlanDraft, 
/**
 * What is wrong, by field.
 */
faults: Array<FieldProblem>, 
/**
 * What stands in the way of changing this throw to it.
 */
refusal: Problem | null, 
/**
 * The plan, when it can be.
 */
plan: Plan | null, 
/**
 * The change, when there is one and it can be made.
 */
change: Button | null, 
/**
 * What the change would do, before and after.
 */
compare: Array<CompareRow>, 
/**
 * What becomes of pieces that no longer fit, a sentence each.
 */
aside: Array<string>, 
/**
 * The figures.
 */
figures: Array<Figure>, 
/**
 * What the maker should hear.
 */
advice: Array<Problem>, 
/**
 * What of it the plan in force does not give: read before the change is agreed to.
 */
doubts: Array<Problem>, 
/**
 * The lap in section, to scale.
 */
picture: Picture | null, 
/**
 * The grid.
 */
grid: Picture | null, 
/**
 * What was learned on the throw this one is made after.
 */
lessons: Lessons | null, };

export type Prefs = { 
/**
 * Inches or metric, and how fine.
 */
ruler: Ruler, 
/**
 * Size of text in per cent: 100 to 200.
 */
text: number, 
/**
 * Dark, light, or as the device has it.
 */
theme: Theme, 
/**
 * The code of the language; none for the device's own where it is spoken here.
 */
language: string | null, 
/**
 * Neither sound nor vibration tells that something is cool.
 */
quiet?: boolean, };

export type Print = { 
/**
 * What the maker calls it.
 */
name: string, 
/**
 * Its colour for the picture, `#rrggbb`.
 */
colour: string, 
/**
 * Its drawn texture.
 */
texture: Texture, 
/**
 * Squares of it at hand, where counted.
 */
stock: Count | null, 
/**
 * It is cloth, or squares too large, of which she cuts the squares: cutting them is a step.
 */
uncut?: boolean, 
/**
 * Each square of it is another, as in a pack of many fabrics: none is like the one beside it.
 */
mixed?: boolean, 
/**
 * Its squares are of this side, smaller than the throw's: each lies as a patch in the middle
 * of a denim square, clear of the laps, and is stitched round.
 */
patch?: Length, 
/**
 * A photo of it, shown in place of the drawn texture where it is there.
 */
photo?: string, };

export type PrintOrder = { 
/**
 * The wall card instead of the making sheet.
 */
card: boolean, 
/**
 * The making sheet as a blank handout for a class: the plan without anything of this
 * maker's record, with lines for another maker's own figures.
 */
blank: boolean, 
/**
 * The systems of units.
 */
units: PrintUnits, 
/**
 * The paper.
 */
paper: PrintPaper, 
/**
 * In large print.
 */
large: boolean, 
/**
 * In black and white.
 */
black: boolean, 
/**
 * With the story and its photos; the wall card and the handout have none.
 */
story: boolean, 
/**
 * The time zone whose days are written.
 */
zone: ZoneName, };

export type PrintPaper = "a4" | "letter";

export type PrintUnits = "both" | "inches" | "metric";

export type Printing = { 
/**
 * Steps done.
 */
done: number, 
/**
 * Steps in all.
 */
all: number, };

export type Problem = { 
/**
 * Stable code, for programs.
 */
code: string, 
/**
 * What is wrong and where, in plain words.
 */
said: string, 
/**
 * What to do next.
 */
next: string, 
/**
 * What else there is to know, for who asks.
 */
details?: string, };

export type Query = { "see": "work", 
/**
 * Only work done there.
 */
station: Station | null, 
/**
 * This batch, not the one that comes first.
 */
batch: [Task, Kind] | null, } | { "see": "bench", 
/**
 * The piece chosen.
 */
chosen: Rect | null, } | { "see": "faces", 
/**
 * Which.
 */
face: Face, } | { "see": "wishes", 
/**
 * As chosen; none for what was said last.
 */
wishes: Wishes | null, } | { "see": "floor", 
/**
 * Which part, from 0.
 */
part: number, } | { "see": "covering" } | { "see": "plan", 
/**
 * What is typed; none for the current plan.
 */
draft: PlanDraft | null, } | { "see": "measure", 
/**
 * Which.
 */
piece: Rect, 
/**
 * Width as typed.
 */
width: string, 
/**
 * Height as typed.
 */
height: string, } | { "see": "outline", 
/**
 * Which.
 */
piece: Rect, 
/**
 * As typed.
 */
typed: OutlineTyped, } | { "see": "trim" } | { "see": "off", 
/**
 * Which.
 */
piece: Rect, 
/**
 * What happened to it.
 */
why: Mishap | null, } | { "see": "hold", 
/**
 * Width as typed.
 */
width: string, 
/**
 * Height as typed.
 */
height: string, } | { "see": "pile" } | { "see": "cutting", 
/**
 * The heap.
 */
n: number, 
/**
 * The piece, counted from 0.
 */
index: number, 
/**
 * The outline as typed; none for the one kept.
 */
typed: PieceTyped | null, 
/**
 * A point being dragged.
 */
drag: Drag | null, } | { "see": "gather" } | { "see": "scraps", 
/**
 * As typed; none for the plan's.
 */
typed: ScrapTyped | null, } | { "see": "whole", 
/**
 * Width as typed.
 */
width: string, 
/**
 * Height as typed.
 */
height: string, } | { "see": "history", 
/**
 * How many lines at most.
 */
most: number, } | { "see": "hand-on" } | { "see": "story", 
/**
 * The time zone whose days are written.
 */
zone: ZoneName, };

export type Rect = [number, number, number, number];

export type RemedyRow = { 
/**
 * What to do.
 */
title: string, 
/**
 * What it means and costs, a sentence each.
 */
lines: Array<string>, 
/**
 * Said once it is done.
 */
done: string, 
/**
 * Do it.
 */
button: Button, };

export type Reminder = { 
/**
 * The throw's folder's name.
 */
id: string, 
/**
 * Which throw it is, and what the maker does about it.
 */
said: string, };

export type Request = { "request": "act", 
/**
 * Which.
 */
action: Command, } | { "request": "undo" } | { "request": "redo" };

export type Ruler = { 
/**
 * Inches or metric.
 */
system: System, 
/**
 * Finest inch mark shown.
 */
fraction: Fraction, 
/**
 * Millimetres or centimetres.
 */
metric: MetricUnit, };

export type Scrap = { 
/**
 * Lap or seam.
 */
joining: Joining, 
/**
 * Its lap or allowance.
 */
lap: Length, 
/**
 * Its stitch.
 */
stitch: Stitch, 
/**
 * What she thought.
 */
verdict: ScrapVerdict, 
/**
 * In her words, if she wrote any.
 */
note: string, };

export type ScrapRow = { 
/**
 * What was tried.
 */
title: string, 
/**
 * What came of it, a line each.
 */
lines: Array<string>, 
/**
 * Takes it for the plan.
 */
choose: Button | null, 
/**
 * What taking it would do, before and after.
 */
compare: Array<CompareRow>, 
/**
 * What stays as it is and what is to be trimmed again, a sentence each.
 */
aside: Array<string>, };

export type ScrapTyped = { 
/**
 * How its edges are held together.
 */
joining: Joining, 
/**
 * Its lap or allowance.
 */
lap: string, 
/**
 * Which stitch.
 */
stitch: StitchKind, 
/**
 * Twin spacing, distance of two rows, or stitch width.
 */
width: string, 
/**
 * Opening of the plate; may be empty.
 */
opening: string, };

export type ScrapVerdict = "right" | "little-fringe" | "bulky" | "puckers" | "other";

export type ScrapsView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The fields, each measure with its unit spelled out.
 */
tidy: ScrapTyped, 
/**
 * What is wrong, by field.
 */
faults: Array<FieldProblem>, 
/**
 * The plan's lap, and beside it the one typed where it is another.
 */
columns: Array<LapColumn>, 
/**
 * The scrap as typed, to keep with a verdict; none while something is wrong.
 */
scrap: Scrap | null, 
/**
 * Keeps the plate's opening, where it was typed anew.
 */
plate: Button | null, 
/**
 * Verdicts.
 */
verdicts: Array<Choice<ScrapVerdict>>, 
/**
 * Scraps tried, newest first.
 */
rows: Array<ScrapRow>, };

export type Share = { 
/**
 * `A quarter`.
 */
label: string, 
/**
 * Squares.
 */
squares: number, };

export type ShelfAnswer = { 
/**
 * The throw begun, if one was.
 */
id: string | null, 
/**
 * The shelf now.
 */
shelf: ShelfView, };

export type ShelfCommand = { "command": "begin", 
/**
 * The beginning.
 */
action: Command, 
/**
 * What is put on its pile at once.
 */
pile?: Array<Command>, } | { "command": "demo" } | { "command": "delete", 
/**
 * Which.
 */
id: string, } | { "command": "again", 
/**
 * The older one.
 */
id: string, 
/**
 * The beginning.
 */
action: Command, 
/**
 * What is put on its pile at once.
 */
pile?: Array<Command>, } | { "command": "restore", 
/**
 * Which.
 */
id: string, } | { "command": "erase", 
/**
 * Which.
 */
id: string, } | { "command": "clear-copies", 
/**
 * Which.
 */
id: string, } | { "command": "copy-later", 
/**
 * Which.
 */
id: string, };

export type ShelfRow = { 
/**
 * Its folder's name.
 */
id: string, 
/**
 * Its name, and how far it is.
 */
head: Head | null, 
/**
 * The grid in words.
 */
grid: string, 
/**
 * The next step in words.
 */
next: string, 
/**
 * When it was last worked on, in milliseconds since 1970.
 */
at: number, 
/**
 * When its last step was done, in milliseconds since 1970, if every step is.
 */
finished: number | null, 
/**
 * A small picture of its front, drawn without photos.
 */
picture: Picture | null, 
/**
 * What is wrong with it, if it cannot be opened, or what was mended.
 */
problem: Problem | null, 
/**
 * It is not read yet: the shelf is to be asked again.
 */
unread?: boolean, 
/**
 * The copies that are kept beside its file since it was merged, if there are any.
 */
copies?: string, };

export type ShelfView = { 
/**
 * Throws in work, the last worked on first.
 */
rows: Array<ShelfRow>, 
/**
 * Throws put away.
 */
archived: Array<ShelfRow>, 
/**
 * Throws deleted but not yet erased.
 */
deleted: Array<ShelfRow>, 
/**
 * The throw whose copy is to be saved elsewhere, if one is.
 */
reminder?: Reminder, };

export type Shown = { 
/**
 * For the eye, with ≈ before it when rounded.
 */
text: string, 
/**
 * For a screen reader.
 */
spoken: string, 
/**
 * Whether it was rounded to the ruler.
 */
rounded: boolean, };

export type Sides = { 
/**
 * Along the top.
 */
top: Length, 
/**
 * Down the right.
 */
right: Length, 
/**
 * Along the bottom.
 */
bottom: Length, 
/**
 * Down the left.
 */
left: Length, };

export type SquareStage = "open" | "cut" | "ready" | "held" | "paired" | "blocked" | "squared" | "joined";

export type Stage = "pile" | "cut" | "cover" | "pairs" | "fours" | "squared" | "joined" | "bound" | "washed";

export type StageIs = "through" | "now" | "ahead";

export type StageKey = { 
/**
 * The stage.
 */
stage: SquareStage, 
/**
 * Its name.
 */
label: string, 
/**
 * How many squares are there now.
 */
count: number, };

export type StageRow = { 
/**
 * Which.
 */
stage: Stage, 
/**
 * Its name.
 */
label: string, 
/**
 * Whether it is through, now or ahead.
 */
is: StageIs, 
/**
 * The same in a word.
 */
state: string, 
/**
 * Steps done.
 */
done: number, 
/**
 * Its steps.
 */
all: number, 
/**
 * How many pieces are through, in words.
 */
count: string, 
/**
 * How long it still takes, in words; none where nothing is left or it takes no time of hers.
 */
left: string | null, };

export type StartOffers = { 
/**
 * Kinds of jeans.
 */
jeans: Array<Choice<GarmentKind>>, 
/**
 * Their sizes.
 */
sizes: Array<Choice<GarmentSize>>, 
/**
 * Cloth as it is sold.
 */
cloths: Array<ClothOffer>, };

export type Station = "table" | "iron" | "machine" | "wash";

export type StationTab = { 
/**
 * Which; none for anywhere.
 */
station: Station | null, 
/**
 * Its name.
 */
label: string, 
/**
 * Pieces ready there.
 */
ready: number, 
/**
 * Spoken label, with the count.
 */
spoken: string, 
/**
 * Chosen now.
 */
chosen: boolean, };

export type StationTyped = { 
/**
 * Height above the hem.
 */
at: string, 
/**
 * Width there.
 */
width: string, };

export type Stitch = { "kind": "straight" } | { "kind": "twin", 
/**
 * Distance between the needles, in nanometres.
 */
spacing: Length, } | { "kind": "two-rows", 
/**
 * Distance from the first row to the second, in nanometres.
 */
spacing: Length, } | { "kind": "zigzag", 
/**
 * Full width of the stitch, in nanometres.
 */
width: Length, };

export type StitchKind = "straight" | "twin" | "two-rows" | "zigzag";

export type Story = { 
/**
 * The throw's name.
 */
title: string, 
/**
 * What it is, a line each.
 */
lines: Array<string>, 
/**
 * Day by day, the first first; days without anything to show are left out.
 */
days: Array<StoryDay>, };

export type StoryDay = { 
/**
 * The date (ISO 8601).
 */
date: string, 
/**
 * The date in words.
 */
title: string, 
/**
 * What was made that day, in a sentence.
 */
made: string | null, 
/**
 * What else there is to show, in order.
 */
items: Array<StoryItem>, };

export type StoryItem = { 
/**
 * Of what sort.
 */
sort: StorySort, 
/**
 * The sort in words.
 */
label: string, 
/**
 * The words; a photo's may be empty.
 */
words: string, 
/**
 * The piece and the step it is about.
 */
about: string | null, 
/**
 * The photo.
 */
photo: string | null, };

export type StorySort = "turn" | "note" | "next" | "photo" | "mishap";

export type StoryView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The story.
 */
story: Story, };

export type Swatch = { 
/**
 * As it is in the throw.
 */
print: Print, 
/**
 * One or two letters, so that colour is never the only sign.
 */
letters: string, 
/**
 * How many are placed and how many there are, in words.
 */
count: string, 
/**
 * So many of them are still to come from the pile.
 */
on_pile: number, };

export type System = "inch" | "metric";

export type Tally = { 
/**
 * Of what.
 */
label: string, 
/**
 * Done.
 */
done: number, 
/**
 * In all.
 */
all: number, 
/**
 * In words.
 */
text: string, };

export type Task = "cut" | "lap-halves" | "press-halves" | "cool-halves" | "stitch-halves" | "cut-fabric" | "cover-front" | "cover-back" | "press-cover" | "cool-cover" | "stitch-patch" | "dot" | "press-lap" | "cool-lap" | "pin" | "stitch" | "press-seam" | "press-block" | "square-up" | "trim-edge" | "cut-binding" | "join-binding" | "press-binding" | "glue-binding" | "stitch-binding" | "snip" | "wash" | "clip";

export type Texture = "plain" | "stripe" | "check" | "dot" | "sprig" | "slant" | "wave" | "cross";

export type Theme = "auto" | "light" | "dark";

export type Tile = "twill" | "twill-broken" | "twill-flat" | "twill-double" | "twill-wrong" | "twill-broken-wrong" | "twill-flat-wrong" | "twill-double-wrong" | "next" | "done" | "lap" | "waste" | "amiss" | Texture;

export type TileMarks = { 
/**
 * Its name.
 */
tile: Tile, 
/**
 * Its side, as a part of the picture's `repeat`.
 */
side: number, 
/**
 * How strongly its marks are drawn, from 0 to 1.
 */
strength: number, 
/**
 * Up to this lightness of the ground, from 0 to 255, its marks are light; on a lighter
 * ground they are dark.
 */
light_up_to: number, 
/**
 * The marks.
 */
strokes: Array<TileStroke>, };

export type TileStroke = { 
/**
 * Its way, as SVG 1.1 writes path data.
 */
d: string, 
/**
 * How wide it is; 0 where it is filled instead.
 */
width: number, 
/**
 * Lengths of its dashes and gaps, if it has any.
 */
dash: string | null, };

export type TrimRow = { 
/**
 * The size.
 */
size: Shown, 
/**
 * The finished size with it.
 */
finished: Shown, 
/**
 * What it costs, in words.
 */
said: string, 
/**
 * Chosen now.
 */
chosen: boolean, 
/**
 * Choose it; none where it is chosen or cannot be.
 */
choose: Button | null, 
/**
 * The one to take, all in all.
 */
best: boolean, 
/**
 * How each short piece is saved, a sentence each.
 */
saves: Array<string>, };

export type TrimView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * Largest first.
 */
rows: Array<TrimRow>, 
/**
 * Blocks measured so far, in words.
 */
said: string, 
/**
 * Why the best is best, in two sentences.
 */
reason: Array<string>, 
/**
 * Rows and columns that do not close, a sentence each; or that all do.
 */
closing: Array<string>, 
/**
 * The blocks, those that are off marked.
 */
picture: Picture, 
/**
 * What the marks mean.
 */
key: Array<InkKey>, };

export type Use = { "for": "denim", 
/**
 * Those of this denim of the throw's, counted from 0; any of them where it was not
 * said.
 */
denim?: number, } | { "for": "fabric", 
/**
 * The print, counted from 0.
 */
print: number, };

export type View = { "seen": "work" } & WorkView | { "seen": "bench" } & BenchView | { "seen": "faces" } & FacesView | { "seen": "wishes" } & WishesView | { "seen": "floor" } & FloorView | { "seen": "covering" } & CoveringView | { "seen": "plan" } & PlanView | { "seen": "measure" } & MeasureView | { "seen": "trim" } & TrimView | { "seen": "off" } & OffView | { "seen": "hold" } & HoldView | { "seen": "whole" } & WholeView | { "seen": "pile" } & PileView | { "seen": "cutting" } & PileCutView | { "seen": "gather" } & GatherView | { "seen": "scraps" } & ScrapsView | { "seen": "history" } & HistoryView | { "seen": "hand-on" } & ExportView | { "seen": "story" } & StoryView;

export type ViewAnswer = { 
/**
 * Counts what was done since the service was started. Answers may overtake each other:
 * one with a lower number than another shows the throw as it was before.
 */
revision: number, 
/**
 * The screen.
 */
view: View, };

export type WayOffer = { 
/**
 * Which, how many squares it gives, and how many more than the plain way that is.
 */
label: string, 
/**
 * What it changes; nothing for the plain way.
 */
text: string | null, 
/**
 * It is the one that is taken.
 */
chosen: boolean, 
/**
 * Takes it; none where it is taken.
 */
choose: Button | null, };

export type WayView = { 
/**
 * The stages the throw goes through, in order.
 */
rows: Array<StageRow>, 
/**
 * The stage the throw is at and how far within it, in a few words.
 */
said: string, 
/**
 * Which stage of how many, for those who cannot see the row of them.
 */
place: string, 
/**
 * How long all that is left takes.
 */
left: string, 
/**
 * The same where there is little room.
 */
left_short: string, };

export type WholeView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * What it is set against: as foreseen, or as it was before washing.
 */
foreseen: Figure, 
/**
 * What is wrong with what was typed, by field (`width`, `height`).
 */
faults: Array<FieldProblem>, 
/**
 * Where the difference came from, a sentence each.
 */
lines: Array<string>, 
/**
 * Keeps the measure.
 */
keep: Button | null, 
/**
 * Each time the whole was measured, with its change in washing.
 */
kept: Array<string>, };

export type WishLine = { 
/**
 * What it is, in a word or two.
 */
label: string, 
/**
 * How it stands.
 */
value: string, 
/**
 * Whether it is met; none where it is told and nothing was wished for.
 */
met: boolean | null, };

export type Wishes = { 
/**
 * Squares covered on the front, in all.
 */
front: Count, 
/**
 * Squares covered on the back, in all.
 */
back: Count, 
/**
 * Like prints keep apart.
 */
apart: Apart, 
/**
 * An order for shades and fabrics.
 */
pattern: Pattern, 
/**
 * Which way the grain runs.
 */
grain: Grain, 
/**
 * Glued squares and sewn pieces may change places and be turned.
 */
move_made: boolean, 
/**
 * Which denim squares are to be of; where it is not said, as they are now.
 */
denims?: DenimWish, 
/**
 * Squares whose denim was chosen by hand may be of another, too.
 */
by_hand_too?: boolean, 
/**
 * Most fabrics that may meet at one crossing, both faces together; where it is not said,
 * any number.
 */
crossing?: Count, };

export type WishesView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * As chosen now.
 */
wishes: Wishes, 
/**
 * Squares in all.
 */
squares: number, 
/**
 * Fewest that can be covered on the front and on the back: what is glued or sewn.
 */
least: [number, number], 
/**
 * Most squares that can be covered on the front and on the back.
 */
most: [number, number], 
/**
 * How many squares are still free and what can be had, where some are not.
 */
free: string | null, 
/**
 * Where squares that are sewn in are bare: that fabric can be laid on them by hand, in words.
 */
by_hand_on_sewn: string | null, 
/**
 * Shares to choose with one tap, with what they come to.
 */
shares: Array<Share>, 
/**
 * What stays as it is, in words.
 */
stays: string | null, 
/**
 * Something is made that could be moved.
 */
made: boolean, 
/**
 * There are several denims, and squares that are not cut yet.
 */
denims: boolean, 
/**
 * Where the denims are chosen, what the pile gives of each, in words.
 */
pile: string | null, 
/**
 * How many squares not cut yet have a denim chosen by hand, in words.
 */
by_hand: string | null, 
/**
 * More is wished for than there is fabric.
 */
short: string | null, 
/**
 * How the faces stand to these wishes now.
 */
lines: Array<WishLine>, };

export type WorkView = { 
/**
 * Common to all screens.
 */
head: Head, 
/**
 * The places, with how much is ready at each.
 */
stations: Array<StationTab>, 
/**
 * To be answered first: which squares get fabric.
 */
ask: FacesAsk | null, 
/**
 * The current step; none when all is done or nothing is ready there, or while a lap
 * has to wait for an answer.
 */
card: Card | null, 
/**
 * What else could be done now.
 */
offers: Array<Offer>, 
/**
 * Said when there is no step.
 */
rest: string | null, 
/**
 * Front and back, once all is done.
 */
ended: [Picture, Picture] | null, };

export type WornAsked = { 
/**
 * The question.
 */
text: string, 
/**
 * Nothing more is to be marked.
 */
nothing: Button, };

export type Zone = { 
/**
 * Why.
 */
kind: ZoneKind, 
/**
 * Its lower edge, above the hem.
 */
from: Length, 
/**
 * Its upper edge.
 */
to: Length, 
/**
 * Its left edge, from the middle line.
 */
left: Length, 
/**
 * Its right edge.
 */
right: Length, };

export type ZoneKind = "outseam" | "hem" | "pocket" | "knee" | "hole" | "stain" | "seam" | "cut-edge" | "selvedge";

export type ZoneName = string;

export type ZoneTyped = { 
/**
 * Why.
 */
kind: ZoneKind, 
/**
 * From this height above the hem.
 */
from: string, 
/**
 * To this height.
 */
to: string, 
/**
 * From this far from the cloth's left edge at the lower line.
 */
left: string, 
/**
 * So wide.
 */
width: string, };

export type WordKey =
  | "ui-above-edge"
  | "ui-above-hem"
  | "ui-across"
  | "ui-add-another"
  | "ui-add-denim"
  | "ui-add-fabric"
  | "ui-add-heap"
  | "ui-add-more"
  | "ui-add-photo"
  | "ui-add-width"
  | "ui-added"
  | "ui-again"
  | "ui-again-hint"
  | "ui-all-of-it"
  | "ui-allowance"
  | "ui-aloud"
  | "ui-aloud-stop"
  | "ui-also-ready"
  | "ui-apart-corners"
  | "ui-apart-edges"
  | "ui-apart-free"
  | "ui-app"
  | "ui-as-it-stands"
  | "ui-at-hand"
  | "ui-back"
  | "ui-back-face"
  | "ui-back-to-work"
  | "ui-back-turned"
  | "ui-bare"
  | "ui-before"
  | "ui-begin"
  | "ui-begin-afresh"
  | "ui-bench"
  | "ui-bench-hint"
  | "ui-besides"
  | "ui-best"
  | "ui-between"
  | "ui-between-hint"
  | "ui-bottom"
  | "ui-bring"
  | "ui-bring-back"
  | "ui-broke"
  | "ui-broke-next"
  | "ui-by-fabric"
  | "ui-by-hand-too"
  | "ui-caution"
  | "ui-caution-read"
  | "ui-centimetres"
  | "ui-change"
  | "ui-change-denim"
  | "ui-change-denim-hint"
  | "ui-change-places"
  | "ui-change-plan"
  | "ui-change-wishes"
  | "ui-check-hint"
  | "ui-choose-none"
  | "ui-choose-several"
  | "ui-choose-trim"
  | "ui-chosen"
  | "ui-chosen-now"
  | "ui-clear-copies"
  | "ui-clear-copies-done"
  | "ui-close"
  | "ui-cloth-cut"
  | "ui-cloth-edges-hint"
  | "ui-cloth-keep"
  | "ui-cloth-kept"
  | "ui-cloth-length"
  | "ui-cloth-name"
  | "ui-cloth-selvedge"
  | "ui-cloth-stretch"
  | "ui-cloth-trimming"
  | "ui-cloth-trimming-hint"
  | "ui-cloth-usual"
  | "ui-cloth-washed"
  | "ui-cloth-weight"
  | "ui-cloth-weight-hint"
  | "ui-cloth-which"
  | "ui-cloth-width"
  | "ui-cloth-width-hint"
  | "ui-colour"
  | "ui-cool"
  | "ui-cool-all-the-same"
  | "ui-cool-now"
  | "ui-cool-ready"
  | "ui-cool-signal"
  | "ui-cooling"
  | "ui-cooling-minutes"
  | "ui-copy-later"
  | "ui-copy-save"
  | "ui-count-it"
  | "ui-covered-back"
  | "ui-covered-front"
  | "ui-covered-squares"
  | "ui-covering-list"
  | "ui-crossing-free"
  | "ui-crossing-one"
  | "ui-crossing-two"
  | "ui-cut-count"
  | "ui-cut-count-hint"
  | "ui-cut-counted"
  | "ui-cut-list"
  | "ui-cut-pieced"
  | "ui-cut-strips"
  | "ui-cut-unkept"
  | "ui-cut-up"
  | "ui-date"
  | "ui-day"
  | "ui-delete"
  | "ui-deleted"
  | "ui-deleted-done"
  | "ui-demo"
  | "ui-denim"
  | "ui-denims"
  | "ui-denims-any"
  | "ui-denims-apart"
  | "ui-denims-bands"
  | "ui-denims-kept"
  | "ui-describe-cloth"
  | "ui-details"
  | "ui-diagonal"
  | "ui-diagonals-hint"
  | "ui-differs"
  | "ui-dismiss"
  | "ui-do-this"
  | "ui-done"
  | "ui-down"
  | "ui-draft-kept"
  | "ui-edit-fabrics"
  | "ui-edit-fabrics-text"
  | "ui-eighth-1"
  | "ui-eighth-3"
  | "ui-eighth-5"
  | "ui-eighth-7"
  | "ui-erase"
  | "ui-erase-ask"
  | "ui-erase-text"
  | "ui-erased"
  | "ui-exposed"
  | "ui-exposed-hint"
  | "ui-fabric"
  | "ui-fabric-for"
  | "ui-fabric-later"
  | "ui-fabric-pack"
  | "ui-fabric-quarters"
  | "ui-fabrics"
  | "ui-fabrics-examples"
  | "ui-fabrics-hint"
  | "ui-fabrics-kept"
  | "ui-face-fixed"
  | "ui-faces"
  | "ui-falling"
  | "ui-fewer"
  | "ui-figures"
  | "ui-find-by"
  | "ui-find-by-size"
  | "ui-find-by-squares"
  | "ui-find-cut"
  | "ui-find-grid"
  | "ui-finest"
  | "ui-finished"
  | "ui-finished-on"
  | "ui-finished-size"
  | "ui-fixed-squares"
  | "ui-floor"
  | "ui-floor-back"
  | "ui-floor-key"
  | "ui-floor-next"
  | "ui-floor-part"
  | "ui-four-others"
  | "ui-fringe"
  | "ui-fringe-hint"
  | "ui-front"
  | "ui-garment"
  | "ui-garment-hint"
  | "ui-garment-size"
  | "ui-gather"
  | "ui-gather-hint"
  | "ui-glued"
  | "ui-go-to-it"
  | "ui-grain-by-turns"
  | "ui-grain-free"
  | "ui-grain-one-way"
  | "ui-grid"
  | "ui-half"
  | "ui-hand-on"
  | "ui-hand-on-bar"
  | "ui-hand-on-hint"
  | "ui-have-fabric"
  | "ui-have-jeans"
  | "ui-have-jeans-hint"
  | "ui-heap-cloth"
  | "ui-heap-garment"
  | "ui-heap-kind"
  | "ui-heap-name"
  | "ui-heap-name-hint"
  | "ui-heap-pack"
  | "ui-heaps"
  | "ui-height"
  | "ui-here"
  | "ui-here-ask"
  | "ui-here-install"
  | "ui-here-install-android"
  | "ui-here-install-iphone"
  | "ui-here-install-now"
  | "ui-here-install-other"
  | "ui-here-installed"
  | "ui-here-kept"
  | "ui-here-low"
  | "ui-here-not-kept"
  | "ui-here-not-offline"
  | "ui-here-offline"
  | "ui-here-text"
  | "ui-here-updated"
  | "ui-history"
  | "ui-hold"
  | "ui-hold-hint"
  | "ui-how-far"
  | "ui-how-to-measure"
  | "ui-in-the-way"
  | "ui-inches"
  | "ui-joining"
  | "ui-keep-fabrics"
  | "ui-keep-faults"
  | "ui-keep-it"
  | "ui-keep-name"
  | "ui-keep-scrap"
  | "ui-keep-when"
  | "ui-keep-when-sides"
  | "ui-kept"
  | "ui-kept-text"
  | "ui-kept-where"
  | "ui-key"
  | "ui-keypad"
  | "ui-knees"
  | "ui-knees-torn"
  | "ui-knees-unknown"
  | "ui-knees-whole"
  | "ui-labelling"
  | "ui-language"
  | "ui-language-device"
  | "ui-lap"
  | "ui-lapped"
  | "ui-lapped-hint"
  | "ui-larger"
  | "ui-last-read"
  | "ui-last-time"
  | "ui-last-worked"
  | "ui-lay-out"
  | "ui-layout"
  | "ui-layout-rings"
  | "ui-layout-taken"
  | "ui-layouts"
  | "ui-leave-it"
  | "ui-left"
  | "ui-lesson-hers"
  | "ui-lessons-step"
  | "ui-let-it-lie"
  | "ui-limit"
  | "ui-longest"
  | "ui-longest-hint"
  | "ui-look-anywhere"
  | "ui-look-for-layouts"
  | "ui-look-over-change"
  | "ui-looking"
  | "ui-make-again"
  | "ui-makes"
  | "ui-mark-place"
  | "ui-measure"
  | "ui-measure-later"
  | "ui-measure-next"
  | "ui-measure-outline"
  | "ui-measure-plain"
  | "ui-measure-this"
  | "ui-measured-so-far"
  | "ui-met"
  | "ui-millimetres"
  | "ui-mixed"
  | "ui-month-1"
  | "ui-month-10"
  | "ui-month-11"
  | "ui-month-12"
  | "ui-month-2"
  | "ui-month-3"
  | "ui-month-4"
  | "ui-month-5"
  | "ui-month-6"
  | "ui-month-7"
  | "ui-month-8"
  | "ui-month-9"
  | "ui-more"
  | "ui-more-jeans"
  | "ui-move-made"
  | "ui-move-made-hint"
  | "ui-move-or-pin"
  | "ui-name"
  | "ui-name-needed"
  | "ui-new-name"
  | "ui-new-throw"
  | "ui-next"
  | "ui-next-field"
  | "ui-next-step"
  | "ui-no-scraps"
  | "ui-no-zones"
  | "ui-not-all-came"
  | "ui-not-met"
  | "ui-not-ready"
  | "ui-note"
  | "ui-note-about-step"
  | "ui-note-keep"
  | "ui-note-next"
  | "ui-note-next-hint"
  | "ui-note-text"
  | "ui-noted"
  | "ui-noted-here"
  | "ui-nothing-covered"
  | "ui-now"
  | "ui-of"
  | "ui-older"
  | "ui-on-with-work"
  | "ui-order"
  | "ui-order-columns"
  | "ui-order-doubling"
  | "ui-order-rows"
  | "ui-outline"
  | "ui-outline-as-kept"
  | "ui-outline-hint"
  | "ui-outline-hint-flat"
  | "ui-outline-kept"
  | "ui-outline-point"
  | "ui-outline-point-hint"
  | "ui-outline-points"
  | "ui-over"
  | "ui-pack-count"
  | "ui-pack-needed"
  | "ui-pack-side"
  | "ui-pack-usual"
  | "ui-page-back"
  | "ui-page-check"
  | "ui-page-cloth"
  | "ui-page-fabrics"
  | "ui-page-finish"
  | "ui-page-joining"
  | "ui-page-size"
  | "ui-pairs"
  | "ui-part-off"
  | "ui-pattern-free"
  | "ui-pattern-light-edges"
  | "ui-pattern-mirror"
  | "ui-pattern-shade-rows"
  | "ui-photo-chosen"
  | "ui-photo-gone"
  | "ui-photo-hint"
  | "ui-photo-keep"
  | "ui-photo-kept"
  | "ui-photo-other"
  | "ui-photo-remove"
  | "ui-photo-removed"
  | "ui-photo-words"
  | "ui-photo-words-hint"
  | "ui-pick-board"
  | "ui-pick-column"
  | "ui-pick-draw"
  | "ui-pick-row"
  | "ui-piece"
  | "ui-piece-cut"
  | "ui-pile"
  | "ui-pile-hint"
  | "ui-pile-tab"
  | "ui-pin"
  | "ui-pinned"
  | "ui-places-changed"
  | "ui-plan"
  | "ui-plan-changed"
  | "ui-plan-hint"
  | "ui-plan-same"
  | "ui-plate-hint"
  | "ui-plate-kept"
  | "ui-plate-opening"
  | "ui-point"
  | "ui-print"
  | "ui-print-a4"
  | "ui-print-black"
  | "ui-print-blank"
  | "ui-print-blank-hint"
  | "ui-print-busy"
  | "ui-print-card"
  | "ui-print-card-hint"
  | "ui-print-colour"
  | "ui-print-hint"
  | "ui-print-ink"
  | "ui-print-large"
  | "ui-print-letter"
  | "ui-print-paper"
  | "ui-print-save"
  | "ui-print-sheet"
  | "ui-print-sheet-hint"
  | "ui-print-size"
  | "ui-print-stop"
  | "ui-print-stopped"
  | "ui-print-story"
  | "ui-print-story-hint"
  | "ui-print-units"
  | "ui-print-units-both"
  | "ui-print-units-inches"
  | "ui-print-units-metric"
  | "ui-print-usual"
  | "ui-print-what"
  | "ui-put-away"
  | "ui-put-away-done"
  | "ui-put-away-it"
  | "ui-quarter-1"
  | "ui-quarter-3"
  | "ui-quarters-count"
  | "ui-quarters-needed"
  | "ui-redo"
  | "ui-redone"
  | "ui-remove"
  | "ui-remove-place"
  | "ui-remove-width"
  | "ui-rename"
  | "ui-renamed"
  | "ui-rest"
  | "ui-right"
  | "ui-right-side"
  | "ui-rising"
  | "ui-rows-apart"
  | "ui-rows-apart-hint"
  | "ui-rub-out"
  | "ui-scrap-kept"
  | "ui-scrap-note"
  | "ui-scrap-note-hint"
  | "ui-scrap-taken"
  | "ui-scraps"
  | "ui-scraps-hint"
  | "ui-scraps-kept"
  | "ui-screens"
  | "ui-seamed"
  | "ui-seamed-hint"
  | "ui-section"
  | "ui-see-faces"
  | "ui-settings"
  | "ui-settings-bar"
  | "ui-sewn-pieces"
  | "ui-shelf"
  | "ui-side"
  | "ui-side-hint"
  | "ui-signal-off"
  | "ui-signal-on"
  | "ui-signs"
  | "ui-smaller"
  | "ui-something-off"
  | "ui-space"
  | "ui-spares"
  | "ui-square"
  | "ui-squares"
  | "ui-squares-have"
  | "ui-stations"
  | "ui-still-cooling"
  | "ui-still-reading"
  | "ui-still-warm"
  | "ui-still-warm-text"
  | "ui-stitch"
  | "ui-stitch-length"
  | "ui-stitch-length-hint"
  | "ui-stock"
  | "ui-stock-besides"
  | "ui-stop-looking"
  | "ui-story"
  | "ui-story-empty"
  | "ui-story-save"
  | "ui-story-what"
  | "ui-straight"
  | "ui-strip"
  | "ui-strip-hint"
  | "ui-swatch-drawn"
  | "ui-swatch-photo"
  | "ui-tail"
  | "ui-tail-hint"
  | "ui-take-layout"
  | "ui-take-out"
  | "ui-taken-back"
  | "ui-taken-off"
  | "ui-tap-layout"
  | "ui-tap-squares"
  | "ui-text-size"
  | "ui-texture"
  | "ui-texture-check"
  | "ui-texture-cross"
  | "ui-texture-dot"
  | "ui-texture-plain"
  | "ui-texture-slant"
  | "ui-texture-sprig"
  | "ui-texture-stripe"
  | "ui-texture-wave"
  | "ui-theme"
  | "ui-theme-auto"
  | "ui-theme-dark"
  | "ui-theme-light"
  | "ui-then"
  | "ui-throw-menu"
  | "ui-to-cutting"
  | "ui-to-glue"
  | "ui-to-measuring"
  | "ui-top"
  | "ui-trim"
  | "ui-trim-chosen"
  | "ui-trim-edge"
  | "ui-trim-edge-none"
  | "ui-trim-edge-step"
  | "ui-trim-hint"
  | "ui-turn-half"
  | "ui-turn-over"
  | "ui-turn-quarter"
  | "ui-turned"
  | "ui-turned-over"
  | "ui-twin"
  | "ui-twin-hint"
  | "ui-twin-width"
  | "ui-two-rows"
  | "ui-uncut"
  | "ui-undo"
  | "ui-undone"
  | "ui-unit-cm"
  | "ui-unit-in"
  | "ui-unit-mm"
  | "ui-units"
  | "ui-units-legend"
  | "ui-unpin"
  | "ui-unpinned"
  | "ui-verdict"
  | "ui-version"
  | "ui-washes"
  | "ui-ways"
  | "ui-weekday-1"
  | "ui-weekday-2"
  | "ui-weekday-3"
  | "ui-weekday-4"
  | "ui-weekday-5"
  | "ui-weekday-6"
  | "ui-weekday-7"
  | "ui-welcome"
  | "ui-welcome-text"
  | "ui-what-can-be-done"
  | "ui-what-changes"
  | "ui-what-happened"
  | "ui-where-to-cut"
  | "ui-which-denim"
  | "ui-which-fabric"
  | "ui-which-face"
  | "ui-which-keep"
  | "ui-which-square"
  | "ui-which-strip"
  | "ui-whole"
  | "ui-width"
  | "ui-width-there"
  | "ui-wish-apart"
  | "ui-wish-crossing"
  | "ui-wish-denims"
  | "ui-wish-grain"
  | "ui-wish-pattern"
  | "ui-wished-size"
  | "ui-wished-size-hint"
  | "ui-wishes-now"
  | "ui-work"
  | "ui-worn"
  | "ui-wrong-side"
  | "ui-your-throws"
  | "ui-zigzag"
  | "ui-zigzag-width"
  | "ui-zone-from"
  | "ui-zone-from-edge"
  | "ui-zone-kind"
  | "ui-zone-left"
  | "ui-zone-to"
  | "ui-zone-to-edge"
  | "ui-zone-width"
  | "ui-zones"
  | "ui-zoom";

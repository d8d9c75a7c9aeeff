# The window's own words: labels of buttons, fields and screens.
# Every key begins with ui- and takes no arguments; the window gets them all when it opens.

# Everywhere
ui-app = Lapwork
ui-back = Back
ui-shelf = Shelf
ui-undo = Undo
ui-redo = Redo
ui-undone = Taken back
ui-redone = Done again
ui-done = Done
ui-close = Close
ui-dismiss = Close this message
ui-again = Try again
ui-broke = Something went wrong inside the app.
ui-broke-next = Try again. What you had done is kept.
ui-name = Name
ui-more = One more
ui-fewer = One fewer
ui-next = Next
ui-screens = Screens of this throw

# The tabs
ui-work = Work
ui-faces = Faces
ui-bench = Bench
ui-plan = Plan
ui-history = History

# The shelf
ui-welcome = A throw from worn jeans
ui-welcome-text = Plan the squares and the lap, then go one step at a time: what to cut, glue, press and stitch next, and how large it should be. Look round in a throw that is part-way done, or begin your own.
ui-your-throws = Your throws
ui-new-throw = New throw
ui-demo = Look round in a demo throw
ui-last-worked = Last worked on
ui-change = Change
ui-rename = Give it another name
ui-keep-name = Keep this name
ui-renamed = Its name is now
ui-put-away = Put away
ui-put-away-it = Put it away
ui-put-away-done = Put away
ui-take-out = Take it out again
ui-delete = Delete this throw
ui-deleted = Deleted
ui-deleted-done = Deleted
ui-bring-back = Bring it back
ui-erase = Erase for good
ui-erased = Erased
ui-erase-ask = Erase this throw for good?
ui-erase-text = Its plan, its measures and its history will be gone. This cannot be taken back.
ui-keep-it = Keep it

# A new throw, and the plan
ui-new-name = Jeans throw
ui-page-size = Size
ui-page-joining = Joining and stitch
ui-page-finish = Trimming, binding, cooling and washes
ui-page-fabrics = Fabrics
ui-page-check = Check and begin
ui-page-back = Back
ui-begin = Begin this throw
ui-not-ready = Something is still missing or cannot be. See the fields marked.
ui-check-hint = You can change the plan later. What is sewn by then stays sewn.
ui-side = Side of a square, as cut
ui-side-hint = Denim squares and fabric squares alike.
ui-across = Squares across
ui-down = Squares down
ui-joining = How edges are joined
ui-lapped = Lapped
ui-lapped-hint = Raw edge over raw edge
ui-seamed = Seamed
ui-seamed-hint = Right sides together
ui-exposed = Seam outside
ui-exposed-hint = Wrong sides together, edges left to fray
ui-lap = Lap
ui-allowance = Seam allowance
ui-stitch = Stitch
ui-straight = One straight row
ui-twin = Twin needle
ui-zigzag = Zigzag
ui-twin-width = Space between the needles
ui-twin-hint = The first number on the packet, in millimetres: 4.0 mm on a 4.0/100.
ui-zigzag-width = Width of the zigzag
ui-fringe = Least fringe
ui-fringe-hint = The free edge beside the stitching that you trust not to work out.
ui-order = Order of the larger joins
ui-order-rows = Rows first
ui-order-columns = Columns first
ui-order-doubling = Two and two
ui-trim = Trim fours to
ui-trim-hint = Leave empty for the size they come out at.
ui-strip = Width of the binding strip
ui-strip-hint = Cut width; half of it shows on each face.
ui-longest = Longest strip
ui-longest-hint = As long as a leg allows.
ui-tail = Tail of the binding
ui-tail-hint = Extra length to finish with.
ui-cooling-minutes = Minutes to cool
ui-washes = First washes
ui-find-grid = Find a grid
ui-find-by = Look for a grid
ui-find-by-squares = By the squares I have
ui-find-by-size = By the size I want
ui-squares-have = Squares I have
ui-width = Width
ui-height = Height
ui-figures = Figures
ui-in-the-way = What stands in the way
ui-section = The join, cut through
ui-grid = The grid
ui-plan-hint = Change what is not yet made. What is sewn stays as it is.
ui-plan-changed = The plan is changed
ui-plan-same = This is the plan as it stands.
ui-as-it-stands = As it stands

# Fabrics
ui-fabrics = Fabrics
ui-fabric = Fabric
ui-denims = Denims
ui-denim = Denim
ui-fabrics-hint = Name what you have. The colour and texture are for the picture only.
ui-cloth-name = Name
ui-colour = Colour
ui-texture = Texture
ui-texture-plain = Plain
ui-texture-stripe = Stripes
ui-texture-check = Checks
ui-texture-dot = Dots
ui-texture-sprig = Sprigs
ui-texture-slant = Slanting lines
ui-texture-wave = Waves
ui-texture-cross = Crosses
ui-stock = Squares, if counted
ui-remove = Take off
ui-add-fabric = Add a fabric
ui-add-denim = Add a denim
ui-edit-fabrics = Fabrics and denims
ui-edit-fabrics-text = Fabrics already on the list keep their place, since squares refer to them. Names, colours and counts can change.
ui-keep-fabrics = Keep this list
ui-fabrics-kept = The list is kept

# Work
ui-stations = Where you stand
ui-caution = Caution
ui-caution-read = I have read this
ui-cooling = Cooling
ui-still-cooling = still to lie and cool
ui-cool = Cool
ui-cool-now = It can be lifted now.
ui-rest = Nothing to do here now.
ui-look-anywhere = See work anywhere
ui-besides = Besides
ui-also-ready = Also ready
ui-measure-this = Measure this one
ui-note = Write a note
ui-note-text = Note
ui-note-keep = Keep this note
ui-noted = The note is kept

# Faces
ui-which-face = Which face
ui-front = Front
ui-back-face = Back
ui-tap-squares = Tap squares to choose them.
ui-chosen = chosen
ui-choose-none = Choose none
ui-square = square
ui-squares = squares
ui-fabric-for = Fabric for
ui-bare = Bare denim
ui-change-denim = Another denim
ui-change-denim-hint = Denim can be changed until the square is cut.
ui-right-side = Right side to the front
ui-wrong-side = Wrong side to the front
ui-stays = Glued or joined, so it stays as it is
ui-spread = Spread fabrics for me
ui-spread-text = Covers so many squares on each face, spread evenly, no print beside its like where it can be helped. What is glued or joined stays.
ui-covered-front = Covered on the front
ui-covered-back = Covered on the back
ui-spread-go = Spread them
ui-spread-again = Spread another way
ui-spread-done = The fabrics are spread
ui-zoom = Size of the picture
ui-larger = Larger
ui-smaller = Smaller
ui-all-of-it = See all of it

# Bench
ui-bench-hint = Tap a square to see how far it is and what can be done to it.
ui-key = What the signs mean
ui-how-far = How far
ui-piece = This square
ui-spares = Spare squares at hand
ui-measure = Measure
ui-choose-trim = Choose the trim size
ui-trim-chosen = Trim size chosen
ui-finished-size = Finished size
ui-chosen-now = Chosen now

# Measuring
ui-keypad = Number keys
ui-rub-out = Rub out
ui-next-field = Next
ui-point = Point
ui-over = Over, for a fraction
ui-space = Space
ui-eighth-1 = One eighth
ui-quarter-1 = One quarter
ui-eighth-3 = Three eighths
ui-half = One half
ui-eighth-5 = Five eighths
ui-quarter-3 = Three quarters
ui-eighth-7 = Seven eighths
ui-keep-when = Give both sides first
ui-kept = Kept
ui-measure-next = Measure the next one
ui-back-to-work = Back to work
ui-measured-so-far = Measured so far

# What is off, and sizes to hold
ui-something-off = This one is off
ui-what-can-be-done = What can be done
ui-what-happened = What happened to it
ui-which-square = Which square
ui-hold = Hold a size with the laps
ui-hold-hint = Give the finished size you want. The joins still to be sewn can take it up.
ui-whole = Measure the whole
ui-best = Best, all in all
ui-what-changes = What this changes
ui-now = Now
ui-then = Then
ui-differs = differs
ui-between = Lap between fours
ui-between-hint = Leave empty for the same lap everywhere.

# History
ui-taken-back = taken back
ui-older = Show older ones

# Settings
ui-settings = Settings
ui-units = Units
ui-units-legend = Show lengths in
ui-inches = Inches
ui-millimetres = Millimetres
ui-centimetres = Centimetres
ui-finest = Finest inch mark
ui-text-size = Size of the text
ui-theme = Light or dark
ui-theme-auto = As the device has it
ui-theme-light = Light
ui-theme-dark = Dark
ui-kept-where = Where the throws are kept
ui-kept-text = One folder for each throw, on this device only.
ui-version = Version

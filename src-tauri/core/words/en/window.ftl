# The window's own words: labels of buttons, fields and screens.
# Every key begins with ui- and takes no arguments; the window gets them all when it opens.

ui-app = Lapwork
ui-back = Back
ui-undo = Undo
ui-redo = Redo

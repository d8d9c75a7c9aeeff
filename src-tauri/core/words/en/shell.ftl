# What the shell says: troubles with files, and the command line.

error-disk = { $kind ->
    [full] The disk is full, so { $file } could not be written.
    [forbidden] { $file } may not be read or written here.
    [exists] { $file } is there already, and is left as it is.
   *[other] { $file } could not be read or written: { $why }.
}
error-disk-next = { $kind ->
    [full] Free some space, then do it again. What was kept before is safe.
    [forbidden] Allow Lapwork to read and write in that folder, then do it again.
    [exists] Choose another name, or move that one away first.
   *[other] Check that the disk is connected and works, then do it again. What was kept before is safe.
}
error-locked = Lapwork is open twice, and only one of them may write in its folder.
error-locked-next = You can look round here. To work on, close the other one, then try again.
error-torn = { $bytes ->
    [one] The last byte of this throw’s record could not be read, so it is left out.
   *[other] The last { $bytes } bytes of this throw’s record could not be read, so they are left out.
} That happens when the app or the device stops half-way through a step.
error-torn-next = { $count ->
    [one] { $count } entry before that is kept.
   *[other] All { $count } entries before that are kept.
} See whether your last tick is there. The file as it was is kept at { $copy }.
error-torn-left = The last step was only half written, and the file cannot be repaired just now.
error-torn-left-next = You can look round. Free some space, or close the other Lapwork, and open it again to work on.
error-unsure = The disk failed while { $file } was being written ({ $why }). { $seen ->
    [before] This step was not kept; all before it can be read there.
    [after] It can be read there as done, but the disk did not say that it is safe.
   *[neither] It no longer reads as it was written.
}
error-unsure-next = { $seen ->
    [before] Check that the disk works, then do it again.
    [after] Check that the disk works, open Lapwork again, and look whether the step is there before you do it a second time.
   *[neither] Leave Lapwork open: it still knows every step kept before. Check that the disk works, and look whether this step is there before you do it a second time.
}
error-held = The disk failed, and { $file } could not be rewritten, so nothing is added to it just now.
error-held-next = You can look round; the file is left untouched. Check that the disk works and has space, then try again.
error-changed = Another program changed this throw’s file.
error-changed-next = Nothing is lost. { $found ->
    [more] Choose what becomes of the steps found there, then tap again.
   *[other] Tap again.
}
error-changed-details = { $file } was no longer as Lapwork had written it: while the throw was open another program changed the file, put another in its place or took it away. Your last step was not kept. All steps kept before are safe: the file is back in its place with every one of them. { $found ->
    [nothing] Do the last step again. The same is also kept beside it as { $here }.
    [less] What was found there held nothing more. Do the last step again. Both files are kept beside it as { $here } and { $brought }.
    [unsound] What was found there could not be read as a throw. Do the last step again. Both files are kept beside it as { $here } and { $brought }.
   *[more] What was found there holds other steps too: choose what becomes of them, then do the last step again. Both files are kept beside it as { $here } and { $brought }.
}
error-changed-left = Another program changed this throw’s file, and it could not be put right just now. Your last step was not kept.
error-changed-left-next = Leave Lapwork open: it still knows every step kept before. Free some space and check that the disk works, then do the step again.
error-changed-left-details = { $file } is no longer as Lapwork wrote it: while the throw was open another program changed the file, put another in its place or took it away. Your last step was not kept, and the file could not be put right just now ({ $why }).
error-away = The folder { $file }, where your throws are kept, is no longer there, so nothing can be kept just now.
error-away-next = Leave Lapwork open: it still knows every step kept before. Put the folder, or the disk it is on, back in its place, then do the last step again.
error-random = This device gave no random number, so no throw could be begun ({ $why }).
error-random-next = Try again. If it keeps happening, restart the device; the throws you have are not touched.
error-too-large = { $file } is larger than 64 MB, more than Lapwork reads or writes.
error-too-large-next = Begin a new throw for what is still to be made.
error-no-such-throw = This throw is no longer on the shelf.
error-no-such-throw-next = Go back to the shelf; it may be among those deleted.
error-missing = The throw’s folder is there, but not its file { $file }.
error-missing-next = Put the file back from a copy, or delete this throw.
error-bad-id = That is not the name of a throw.
error-bad-id-next = Go back to the shelf and choose one there.
error-settings = The settings in { $file } could not be read, so the usual ones are used.
error-settings-next = Choose your settings again; your throws are not touched.
error-unreadable = This step could not be recorded, so it was not taken.
error-unreadable-next = Go on without it; nothing else is lost. The fault is Lapwork’s, not yours.

error-newer-there = { $file } was written by a newer Lapwork (file version { $version }; this one reads versions 1 and 2).
error-newer-there-next = Open it with that version; it is left untouched here.

error-no-screen = There is no screen here to open a window on.
error-no-screen-next = Start Lapwork from a desktop, or see lapwork --help for what it does without a window.
error-no-home = There is no home folder here to keep throws in.
error-no-home-next = Name a folder in LAPWORK_DATA, then start Lapwork again.
error-no-window = The window cannot be opened: { $why }.
error-no-window-next = Check that WebKitGTK 4.1 is installed, then start Lapwork again.

error-no-file = There is no throw file here.
error-no-file-next = Name a throw.jsonl, or the folder it is in.
error-arguments = Not understood: { $argument }.
error-arguments-next = See lapwork --help.
error-no-command = There is no command “{ $command }”.
error-no-command-next = See lapwork --help.
error-no-path = The path after “{ $command }” is missing.
error-no-path-next = See lapwork --help.

shell-sound = { $count ->
    [one] Sound: { $count } entry.
   *[other] Sound: { $count } entries.
}
shell-torn = { $count ->
    [one] Usable: { $count } entry is sound; the last line is torn and will be left out.
   *[other] Usable: { $count } entries are sound; the last line is torn and will be left out.
}
shell-written = Written: { $file }
shell-taken-back = undone
shell-left-out = { $file }: { $bytes ->
    [one] the last byte cannot be read and is left out.
   *[other] the last { $bytes } bytes cannot be read and are left out.
}
shell-no-copies = No copies are kept beside it.
shell-copies = { $n ->
    [one] 1 copy is kept beside it ({ $size } KB). Add --clear to remove it.
   *[other] { $n } copies are kept beside it ({ $size } KB). Add --clear to remove them.
}
shell-copies-cleared = { $n ->
    [one] 1 copy was removed ({ $size } KB).
   *[other] { $n } copies were removed ({ $size } KB).
}
shell-upgraded = Upgraded. The file as it was: { $copy }
shell-conflict = They differ. First: { $first } | Second: { $second }
shell-decide = { $count ->
    [one] Nothing was written: in one place the copies contradict each other. Say --keep first or --keep second.
   *[other] Nothing was written: in { $count } places the copies contradict each other. Say --keep first or --keep second.
}
shell-help =
    Lapwork plans a lapped raw-edge throw and walks its maker through it.
    { "" }
    lapwork                    open the window
    lapwork figures <path>     print the figures of a throw as JSON
    lapwork history <path>     print what was done and when (UTC), newest first
    lapwork check <path>       say whether a throw file is sound
    lapwork demo <path>        write the demo throw to a new file
    lapwork sheet <path> --out <file>   write the making sheet as PDF
    lapwork draw <path>        list the drawings there are; with the name of one, print it as SVG
    lapwork table <path>       list the tables there are; with the name of one, print it as CSV
    lapwork upgrade <path>     bring a throw file up to this version, keeping it as it was beside
    lapwork copies <path>      list the copies kept beside a throw file when it was merged
    lapwork merge <path> <path> --out <path>
                               make one new file of two copies of a throw
    { "" }
    <path> is a throw.jsonl or the folder it is in.
    { "" }
    --metric                   lengths in millimetres
    --ink                      drawings in black and white
    --card                     the wall card instead of the making sheet
    --blank                    the blank class handout instead of the making sheet
    --units inches|metric|both the measures on a sheet; both unless said
    --paper a4|letter          letter, or a4 with --metric, unless said
    --large                    the sheet in large print
    --clear                    remove the kept copies that are listed
    --keep first|second        when merging: whose side to keep where they differ
    --language <code>          say it in this language (en, de), not the system’s
    --help, --version
    { "" }
    Ends with 0 if all is well, 1 if a checked file has a torn last line or merging needs --keep, 2 if it cannot be done.
    LAPWORK_DATA names the folder where the window keeps its throws.

error-no-drawing = There is no drawing “{ $which }” of this throw.
error-no-drawing-next = Leave out its name to see those there are.
error-no-table = There is no table “{ $which }”.
error-no-table-next = Leave out its name to see those there are.
shell-lies-at = It lies at { $file }.

error-broke = Something went wrong inside Lapwork, so this could not be finished.
error-broke-next = All steps kept before are safe, and were read again from their files. Look whether the last one is there; if not, do it again. The fault is Lapwork’s, not yours.
error-print = The pages could not be made: { $why }.
error-print-next = Go on without the sheet; nothing of the throw is lost. The fault is Lapwork’s, not yours.
error-no-out = The name of the file to write is missing.
error-no-out-next = Add --out and a name, such as --out sheet.pdf.
## Photos

error-photo-large = { $file } is larger than { $most } MB, more than Lapwork reads.
error-photo-large-next = Choose a smaller photo, or save a smaller copy of it first.
error-photo-pixels = The photo has { $have } million points; Lapwork reads up to { $most } million.
error-photo-pixels-next = Choose a smaller photo, or save a smaller copy of it first.
error-photo-side = The photo is { $have } points long on one side; Lapwork reads up to { $most }.
error-photo-side-next = Choose a smaller photo, or cut it to the part you want first.
error-photo-named = This is a { $kind } photo, as some phones take them; Lapwork cannot read { $kind }.
error-photo-named-next = Open it where you view your photos, save or share it as JPEG, and choose that file. The phone’s camera settings may also let you take JPEG photos.
error-photo-kind = That is not a photo Lapwork reads.
error-photo-kind-next = Choose a JPEG, PNG or WebP file.
error-photo-broken = The photo cannot be read; its file is damaged or cut short.
error-photo-broken-next = Choose another, or copy it from the camera again.
error-photo-none = No photo has come.
error-photo-none-next = Choose it again.
shell-photos = Photos


error-no-language = There is no language “{ $language }” here.
error-no-language-next = Name one of these: { $languages }.

## In a browser

error-no-storage = { $why ->
    [none] This browser lacks the kind of storage Lapwork keeps throws in, so nothing can be kept here.
   *[other] This browser’s storage cannot be opened, so nothing can be kept here: { $why }.
}
error-no-storage-next = You can look round. To make a throw, open this page in a newer browser, and not in a private window.

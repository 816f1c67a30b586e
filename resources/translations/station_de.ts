<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
  <context>
    <name>say</name>
    <message>
      <source>A PIN has 4 to 8 digits</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A PIN is kept only as its hash</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A batch has 1 to 99 sheets</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A batch has at most {most} {most|sheet|sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A file tells by its first line which list it is. All of it is taken in, or nothing.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A list has at most {n} {n|line|lines}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A new PIN</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A new PIN for worker {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A new one</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A number sets how many.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A place is two numbers in mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A product needs at least one part</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A recount or a correction mends it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A recount or a correction mends older acts.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A sheet has {most} of part {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A sheet has {most} of these</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A sheet is spoiled while it lies on the bed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A sheet of it is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A supervisor corrects it, with a reason; both are kept.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A supervisor may overrule, with a reason</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A supervisor settles it with badge and PIN.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A supervisor's badge, or put it down.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>A {size} mm bit is needed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>About {minutes} min on this router. Bring the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Add the next one, or close the list.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Add the next one.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Against the master: one in {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Agrees with the master</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All bits good.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All cards</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All of it is in</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All of it is in already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All of it is in: close the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All of it is owed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All packs are scanned there again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All seen. The cart can leave.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All {part} are in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All {sheets} {sheets|sheet is|sheets are} cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>All {sheets} {sheets|sheet|sheets} of batch {batch} {sheets|is|are} cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>An order needs a due time</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>An order needs at least one line</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Another language</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Another sheet, or a supervisor's badge.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Anywhere</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Approve one first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Approve the newest</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Approve this revision</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Arrows: where the tabs were.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Ask the supervisor for a badge.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>At most {most} of them {most|is|are} left</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>At popping</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>At the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>At trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Back a list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Back from the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Back in the list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Back up</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has no copy letter left</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has no sheets of its own</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has none here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has nothing at popping</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has nothing at trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} has {sheets} {sheets|sheet|sheets} now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} in hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is being cut on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is held</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is held already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is held: first-off is wrong</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is held: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is in hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is in hand, sheet {n} next</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is not on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is on it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is on {router} already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is planned for {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} is released to {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} loaded {at} by worker {by}: next sheet, or a mistake?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} may go on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch} taken: {left} of {sheets} {sheets|sheet|sheets} to cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch}: no more sheets</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch}: {good} good passed on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch}: {good} good, {faults}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {batch}: {told}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batch {old} waits in the queue.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Batches that could be theirs: {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Before sheet {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Before the next sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Before the next sheet: {due}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bench {bench}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit broken</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit is right</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit no. {bit}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bits} of its life.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is broken</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is broken already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is in already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is in {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is in: {words}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is {size} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit} is {state}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {bit}: {left} m left, {need} m needed. Watch it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bit {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bits</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bits in the drawer</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bits near their end</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bring it to trimming.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Bring them to trimming with the traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>By due time</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>CSV files in {folder}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Call the supervisor.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Call the supervisor; look at bit, zero and file.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cancel it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cancel it, correct a count, or leave it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cancel this order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cancelled order {order} has {n} in its pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Carts</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Change it in the office.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Check it when the bed is free.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Check it, tick it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Check the batch number.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Check the bit: scan it or tick it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Check the cut file, tick it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a field and type.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a field first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a pack of the list.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a part first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a router.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose a row.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose another router.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose another, or none.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose another.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Choose how it is settled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Claim an order first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Clear the number</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close it as owed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close it as owed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Close: {n} to go</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Closed last</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Comes next</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Compare with the master before sheet {sheet}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Compare with what lies there.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Compare, then touch the right one.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Confirm it; the rest stays here.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Copy {new} of batch {batch} is printed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Copy {old} is void: throw it away.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Correct a count</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Correct count</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Correct it and save again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Correct it in the office.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Corrected from {book} to {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Corrected: {counted} there, {by} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Corrected: {n} {part} there, {by} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Could be theirs</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again, or say that it is so.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again. Scan it again if the figures on the screen are right.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again. Somebody may have passed some on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count again: {who}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count what is wrong first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Count what survived</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Counted {counted}, the book says {book}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Counted {counted}: the book agrees</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Counted {n}, the book says {book}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Counted {n}: the book agrees</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut file is right</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut files</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut it out and put it in place.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut one more sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut one more to make good, or take the next batch.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Cut them out, put them up.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Dark or light screen</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Decimal point</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Differs from the master</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Do</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Do it when the bed is free.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Do the checks, then “{done}”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Drawn from the cut file.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Drawn from the cut file. Dots are tabs, black blocks hold-downs.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Due a day later</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Due a day sooner</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Due {due}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Due: {why}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>End the stop first, or report the sheet spoiled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>End the stop first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enough: take {n} from rack {place}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter 4 to 8 digits that nobody guesses.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number above 0.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number from 0 to {most}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number from 1 to {gone}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number from 1 to {most}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number from 1 to {n}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a number.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter a whole number.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter adds it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter another.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter how many of that batch are there.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter it again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter its {what}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the material first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the new PIN again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the number that you counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the number.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the reading in mm, such as 6.4.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the same PIN again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter the sheets again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter what the scale shows, in g.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter your PIN</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Enter your PIN.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Every card of the shop is printed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Everything is packed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Eye protection while popping; gloves for sheets only. Vacuum dust, never blow it. {local}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Feed against the bit's rotation, guard on, {small}; never between bit and fence. Gloves off. Extraction on. {local}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Finish it or put it down first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First on this router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First, before sheet {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off against the master</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off agrees</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off agrees on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off before the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off is due: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First-off is wrong</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>First: {n} {part} from rack {place}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>For one order? Scan or touch it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>For order {id}, due {due}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>For order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>For {n} {n|order|orders}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>From sheet to cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>From the work</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Give it another number.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on from there.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on loading it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on with it later, or put them back first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on with it, or put it down. Nothing was counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on with sheet {sheet}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on with your work.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Go to its own screen.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Goes under rack {place}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Good morning</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Hand over</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Handover</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Handover closed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Has the spindle stopped? Scan again if it has.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Held down, bed vacuumed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Held: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Help at trimming.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Here: {parts}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Hold a batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Hold the batch, tell the supervisor.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Hold this batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Hold-down, bed vacuumed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many are good now?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many are really there?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many are split off?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many are there?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many are whole?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many did you count?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many of them are whole?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many of what?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many sheets came?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many sheets?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many were found?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many {part} are good now?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many {part} are really in rack {place}?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many {part} are really there?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How many?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>How thick is the sheet?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>I have read it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It could not be decided again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It fits none of the bits in the changer.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It goes with it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It is at trimming. Scan the next slip.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It is empty now.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It is free: scan a traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It is wrong</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It needs {l} × {w} mm flat. Split it, or wrap it by hand.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It runs on router {routers}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It stays with this station until they are put back.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>It wants {parts}. Put the {part} back.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its card is printed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its number has letters and digits only, not {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its number is printed as a code: digits only, not {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its number stays as it is</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its own traveller goes with the {quantity}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its pack goes onto the cart.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its pack must be opened and put back.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its pieces have gone on, so it cannot be taken back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Its traveller is printed with one more slip.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Label again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Label it, then onto the cart.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Label of pack {pack}: copy {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Leave it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Leave it there, or take its sheet off first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Leave its pack open on the shelf. Take the next.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Left; nothing was changed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Let a batch go on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Let it go on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lift with the legs, keep the pack close. Knife away from the other hand. Local rules come first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Line {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Line {n} is complete</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Line {n} is taken out</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Line {n}: {value}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>List complete</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lists</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Load the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Loading</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Loading scans its slip first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lock</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lock the office</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look at its label.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look at spoilboard and zero before the sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look at the paper.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look at the screen for what comes next.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look through the pack. Close it all the same?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Look twice: {mark}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot {lot} has no sheet left by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot {lot} is another material</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot {lot} is marked: {why}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lot {lot} is {got}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lots</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Lots of {material}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Mailer</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Mailer {name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Mailer {name}. Label it, then onto the cart.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Mailers</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Material</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Materials</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Measure it, enter the reading in mm.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Measure the sheet, enter mm.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Mend the file and read it again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Minutes</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Missing parts found</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>More</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>More of it is a new batch: ask the office.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>More of the list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Needs a look</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Never hold parts by hand. This does not stop it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>New {kind} numbers for station {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next field</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next on this router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next page</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next sheet: scan its own slip. Nothing was counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next: batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next: {n} {part} from rack {place}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Next: {n} × {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No CSV file lies there</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No approved revision of that cut file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No batch in hand yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No batch is on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No batch is under way.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No batch with {part} is under way</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No bit is in the spindle</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No field is chosen</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No first-off is due on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No line is chosen</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No mailer is large enough</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No more are under way: send it short, or put it down.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No number is asked for now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No number yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No open order wants its parts.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No order waits to be packed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No pack is here.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No pack waits.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No pack, no label. Scan its card when parts are there.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No part is.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No pocket takes bit {bit}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No revision of this cut file is approved</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No router runs it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No sheet is being cut.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No sheet is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No sheet of batch {batch} is on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No sheet of batch {batch} was spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No sheets of it are in the store.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No text is asked for now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No {part} are in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>No {part} are under way</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nobody is signed in here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nobody signed in</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>None of the right size.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>None.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not among them?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not complete: {n} to go</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not for one order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not held down or bed not vacuumed yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not scanned at the door: {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not this sheet: measure again, or ask.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not while sheet {n} is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not while sheet {sheet} is cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not while sheet {sheet} is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Not {zone} any more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing else waits.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing has its place there</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing in it differs from what is known</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is in its pack. Put the order down.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is in the pack yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is marked on the sheet now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is missing from this order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is on that cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing is spoiled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing lies in {name} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing of it is left to pack: close it as owed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing to put back from order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing waits for this router.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing waits.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing was counted</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing was counted twice.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing was set.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing was taken in. {first}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing was typed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing yet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Nothing: all is well.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Now choose how it is settled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Now each is good or spoiled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Number cleared</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Number {id} cannot be printed as a code: take the next one</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Number {id} is taken</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Number: {digits}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Numbers cannot be given back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Off the bed: scan it again. A mistake: go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Off the cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Office</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>On the rack today</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>On the sheet: {where}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>On this PC</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Once more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One character of that code is wrong</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One less</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One more sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One more was added at {at} by worker {by}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>One {part} ({g} g) would not show: count those.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only a pack off the cart is opened</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only an order or a batch is cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only some</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only some of it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only some of it: which part?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only {left} {left|is|are} here to split</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Only {n} {part} in {place} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Onto the cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Open a cut file first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Open a lot first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Open a worker first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Open an order, or scan a traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {id} is not open</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} has no pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is cancelled: {n} free on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is closed: all of it is owed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is not cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is put down</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is put down: anybody can take it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is short of {n} × {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is yours</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} is {state} already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} stays with this station: {n} in its pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} waits for {part}: {where}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} wants {name}, which nobody entered</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Order {order} was put down</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Orders</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Others have been at the same pieces meanwhile</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>PIN of supervisor {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is closed: order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is off the cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is on cart {cart} already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is on {cart}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is opened</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} is {state}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} seen at the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack} was seen already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pack {pack}: {g} g on the scale, {grams} ± {plus} g expected</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Packing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Packs on it: {n}. Next pack, or to the door.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Packs that wait: {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Page back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Page {page}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Part</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Part missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Parts</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Parts and mailer, without wrap, in g.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Parts through the shop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pass it on or put it down first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pass on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pass on: {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Passed on at {at} by worker {worker}: {good} good</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Passed on today</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pick up your work first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Pocket {pocket} is empty</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Popping</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Popping passes it on first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Press it again to change it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Press “{start}”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print a new copy</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print its card</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print its card and put it on the stack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print the cart list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print the label again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Print the list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Product</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Products</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Push it to the door and scan “At the door”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Push the cart, never pull it. See over the load. Heavy packs low. {local}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put a file there, then look again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put a new one in.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put a {size} mm bit in and scan it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put all of it back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put back what is in its pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put back what is too many, or take more.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put back {parts}. Then close it as owed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put back {parts}. Then close the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put down</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put down. Start again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put down; nothing was counted</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put everything back on the rack: scan each part, or all of it at once.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it aside. A supervisor lets it go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it aside; a supervisor lets it go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it aside; ask the supervisor.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it aside; the office releases it anew.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it back first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it back on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it down</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it in and scan it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put it with the packs.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put its parts back on the rack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put its traveller with the sheets.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put on last</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put on the rack: {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put them back: rack {place}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put them with batch {batch} at trimming.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put what back?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Put {n} back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Queue of this router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rack place</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rack places</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rack {name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rack {place}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Re-home the router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Re-home the router first: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read CSV</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read a CSV file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read before the next sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read by worker {by}: {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read first: {text}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Read this</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Ready</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Reason</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Reason: {reason}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Reason: {words}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Reasons</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Receive it in the office.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Receive sheets</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Release and print</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Release {name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Report a stop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Report a stop and isolate the spindle first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Resurfaced</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Revision</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Revision {offered} offered, {letter} is approved</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Revisions</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rework traveller {child} goes with the {n}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Rework {batch}, try {n} of {most}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Router re-homed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Router table {bench}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Routers</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 1</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 2</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 3</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 4</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 5</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 6</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 7</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 8</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row 9</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Row {n}: {what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Save</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Say how many are good.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Say how many go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Say what you see</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a part, a rack place, a lot or a traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a part, a rack place, a lot or a traveller; or touch a part.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a reason card for sheets.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a reason card to correct the book.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a reason or “Missing” first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a reason, or enter how many.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a slip</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a traveller</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a traveller first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan a traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan another lot, or have it counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan another part of it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan another part.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan another.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan every pack on it: {n}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan it again for yet another.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan it again to cut it here all the same.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan it again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan it once more. It is written down for the makers.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its card, or its row.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its card, or touch its row; a number first for some.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its card, or type its name.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its card.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its rack place.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its traveller first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its traveller or touch its row.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan its traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan one of our cards or travellers.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan one of those shown.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan or touch the reason.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan or touch your badge.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan or type a {kind} to add it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan pack {pack} next.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan packs onto it first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan packs onto it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the bit or touch its row.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the bit that broke.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the bit's code again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the card again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the card under the master.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the cart's card first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the digit cards first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the label again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the lot of the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the lot of the sheet, measure it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the lot's code.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the next piece of work.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the next traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the order's card, or touch its pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the part's card at the rack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the part's card.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the reason for overruling it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the router's code first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan the traveller again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan your badge</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan your badge first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan your badge to begin.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan your badge.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan your work.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan “That is it” when it is complete.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Scan, type or touch one</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Send it short</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Send it short, or put the order down.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Set another folder under “This shop”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Set it in the office.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Set zero before the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Set zero, tick it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Set zero; first-off before the next sheet.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Settle it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Settled: {how}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Settling is supervisor's work</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet from lot {lot}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {kg} kg: two people or a lift. </source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {kg} kg: two people or a lift. Eye protection while popping; gloves for sheets only. Vacuum dust, never blow it. {local}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {n} is off the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {n} is spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {n} of batch {batch} is on it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {n} of batch {batch} is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {n}: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheets} of batch {batch} in hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} came off {at} by worker {by}: next sheet, or a mistake?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is already off the bed, {at} by worker {by}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is being cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is loaded already, {at} by worker {by}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is not off the bed yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is off the bed: {count} {count|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} is on the bed, not {slip}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} loaded {at} by worker {by}: next sheet, or a mistake?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} of batch {batch} is on the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} spoiled: {kept} whole, {lost} lost</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} started at {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} started {at}, {minutes} min expected</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheet {sheet} was loaded {at} by worker {by}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheets received</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sheets {sheets} of batch {batch} in hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Shop today</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Show the flow</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Show them to the supervisor.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Show what needs a look</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Signed out; what is in hand stays here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Slip and parts to popping. Sheet {n} is next.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Slip and parts to popping. The batch is cancelled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Slip and parts to popping. The batch is cut.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Slip to popping. First-off check before sheet {n}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Someone else</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Something is wrong in the program; nothing was counted</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sounds are off now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sounds are on now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Sounds on or off</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Spindle isolated? Then put a new bit in and scan it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Split a part off</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Split it: the child has its own paper.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Spoilboard of {router} resurfaced</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Spoilboard resurfaced</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start a sheet first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start of day</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start of day done</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start of day done on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start of day is done on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start of day is due on {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start sheet {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start the sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Start the sheet first, or look at the other router.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Station</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Station {station} packs order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Station {station}, worker {worker}, {act}: {n} {n|piece|pieces} not counted, for when it was shared: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Still to see at the door come first</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Stop over after {minutes} min</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Stopped since</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Stopped since {at} already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Supervisor {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Supervisor's work</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Supervisor's work asks for a PIN again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Supervisor: scan your badge, then enter your PIN.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take another one, or take it out there first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take another one.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take another. Only if that station is out of use a supervisor takes it over.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take care</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it from the rack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it off first, then take this batch.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it off first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it off the bed first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it off the bed first: scan its slip.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it off, or scan it onto the cart.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it out</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it to its next place.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take it, or touch “Part missing” to count.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take its batch first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take its parts first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take one off</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take pack {pack} back to packing.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take slip {sheet}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take the next batch.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take the next order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take the next order.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take the next part.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take the rest and close the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Take this line out</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Taken back: {what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Taken in: {new} new, {changed} changed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That PIN is not right</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That batch has no sheets left to cancel</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That batch is not held</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That bit is not in {router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That cart is not at the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no choice here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no code of this shop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no cut file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no lot</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no number of sheets</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no reason for a sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no thickness</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is no worker</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is settled already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That is typed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That order cannot be cancelled any more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That order is not in hand here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That order is not open</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That pack is not here any more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That pack is not on this cart's list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That pack is on no cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That part is not on this sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That was not counted, so it cannot be taken back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That was taken back already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>That {kind} is not for this step</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The bed is free</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The bit is not checked yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The book is set right</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The cart leaves</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The cut file is not checked yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The list is complete</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The list is written</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The list of {cart} is printed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The lower limit is above the upper one</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The new PIN</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The number of this revision is {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The office enters it. Take the next order.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The office gives it one first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The office gives it one.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The office is locked</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The other {left} {left|sheet is|sheets are} held; cut parts go on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The pack has changed since</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The pack is empty</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The rack is below its mark</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The router is told when you pass on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The screen is dark now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The screen is light now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The sheet is off the bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The shop is set up</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The stop is over</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The supervisor sees it under Needs a look.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The table {table} differs in {n} {n|row|rows}: {first}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The two are not the same</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The whole history is copied</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The work in hand stays as it was.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>The {kind} {id} has changed since</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Then scan or touch the reason. Hands off the bed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Then “{done}”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Then “{read}”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no cart {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no field in that row</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no field {name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no file in that row</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no line in that row</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no list called {kind}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no lot {lot}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no order @{word}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no revision {letter}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no row {row}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such bit</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such material</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such part</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no such worker</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no work area {area}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no worker {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is no {kind} {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is nothing in that row</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is nothing to read</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is nothing to take back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is nothing to take back here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>There is one shop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Thickness</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This batch is held</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This does not stop the router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This does not stop the router: use its own stop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This does not stop the router: use its own stop.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This job takes {want}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This order is cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This screen</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This screen is at {area} now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This screen serves one router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This screen speaks {language} now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This shop</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>This shop is set up already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Throw it away; use copy {new}. Nothing was counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Throw its traveller away.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Throw the old label away.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Throw this paper away. Nothing was counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Tick it when the bed is free.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>To be made good</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>To packing, with order {order}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>To packing: {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>To put back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>To rework</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Too heavy by {g} g: look through the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Too light by {g} g: look through the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Too many: {n} × {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Too much is in</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a field first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a field, type, save.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a field.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a file.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a line first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a line.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a piece to count it spoiled there.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a router first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a router or scan its card.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a router.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a row or scan its card.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a row, or add a new one.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch a row.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch another field.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch it, or leave it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch its row first: {parts}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch its row or scan its card.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch its row to change it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch its row, then enter how many.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch one to take it in.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch the line to take out.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch the next field, or save.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch the next row, or work on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch the place first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch the place that was counted.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Touch “Part missing” to count them.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Traveller lost</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Trimmed at {at} by worker {worker}: {n} good</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Try them once more; a third try is not allowed.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type 1 or more.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type it and press Enter.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type it as 26.11. 14:00.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type it on the keyboard</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type one to add it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Type x, then y; or touch it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Under the master: rack {places}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Under their own masters.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Under way</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Under way: {where}. Wait, or send it short.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Undo the last act</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use @area, @router, @bench, @worker, @at or @place.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use a new lot.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use the router's own stop. Hands off until the spindle stands still.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use the router's own stop. Never hold parts by hand.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use the router's own stop. Report the sheet spoiled.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Use the router's own stop. Then scan a reason.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Vacuum lost: the router's own stop, never hold parts by hand. </source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Vacuum the bed, hold the sheet down, tick it.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Void: copy {old} was replaced by copy {new}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Void: see copy {copy}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Wait for it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Wait for sheet {n}, then scan its slip.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Waiting here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Waiting here: {n} more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Waiting to pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Weigh</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Weigh it, then close the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Weight on the scale</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What does it wait for?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What does the scale show?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What else?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What is in hand stays here.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What is not counted as whole is lost.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What is not in the file stays as it was.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What part lies there?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What survived? Enter whole parts, or confirm.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>What was counted?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>When it runs again: “The stop is over”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>When it runs again: “{over}”.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Where was it counted?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Where was what?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch is counted again?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch is held?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch is split?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch may go on?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch needs a new copy?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which batch were they missing from?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which bit broke?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which cart?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which file?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which is free next</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which label?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which lot is the sheet from?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which mailer: can't tell</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which part is short?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which part of batch {batch}?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which part was counted?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which part?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which router?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Which supervisor?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Who works here?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Whole ones to popping. “{more}” makes good.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Why does {router} stand still?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Why is sheet {n} spoiled?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Why is sheet {sheet} spoiled?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Why?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Why? Scan or touch a reason.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>With this work</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work at loading</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work at packing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work at popping</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work at the cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work at trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Work was left in hand: {what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker {id} has a new PIN</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker {id} is no supervisor</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker {id} is signed in</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Worker {new} takes over from {old}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Workers</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Write @place 1200 300.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Write CSV</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Write a CSV file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Write it as 2026-11-25 14:00.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Write it as 2026-11-25T10:42:00.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Yes, I am sure</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Zero</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Zero is not set yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>Zero is set</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>a number now changes the {n} × {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>about</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>about {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>all of it is there</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>at the door: {seen} of {n} seen</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>bit</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>bottom edge at {at} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>button</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>came</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>can't tell: {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cancelled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>change after sheet {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>clamped bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>clear</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>closed {at} by worker {by}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cutfile</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cutting</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>cutting {batch}, sheet {sheet}, free in {left} min</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>digit</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>done</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>due</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>due {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>due {day} {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>due {due}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>field</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>file says {file}, {router} runs it in {real}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>for order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>for the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>found {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>free</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>g, without wrap</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>goes</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>goes at {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>goes to</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>goes {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>good</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>height between two lines: parts waiting · width: how long they wait</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>held</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>held: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>hold-downs set</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>in front of you</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>it is {state}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>it needs, flat</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>it was changed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>its pieces</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>kept from the last sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>large and flat outside</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>last scan</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>late: {note}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>later</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>leaves {due} · nothing short</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>leaves {due} · {short} owed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>left edge at {at} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>left on this sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>line 1: the header must be {names}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>line 1: “{header}” is the header of no list. Write the list out once and see.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>line {n}: {what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>loading {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>loading; scan a pack to put it on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>longer than expected</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>lost</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>lot</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>mailer</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>measure it, enter mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>measure: {low} to {high} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>new</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>no batch on it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>no due time: by need</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>no place</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>no. {bits}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>no. {bit}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>nothing more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>number</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>of no batch</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>of {n} {n|sheet|sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>of {sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>on the scale</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>on the sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>one turn, {m} m</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>or a traveller for all its sheets here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>or touch a batch that waits</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>or touch your number</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>order</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>owed whole</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>packed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>packs</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>packs for a cart</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>part</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>parts</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>passed {n} on</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>place</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>plan for the day</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>point</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>popping, sheet {sheet}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>product</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>put down here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>put {n} on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>rack {name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>rack {place}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>reason</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>revision {has}, approved is {is_}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>revision {letter} is approved</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>revision {letter} is not approved: {left} {left|sheet|sheets} held</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>rework</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>right edge at {at} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>router</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>scan its card or touch its row; a number first for some of it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>scan the card under the master, or touch the row</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>scan the order's card, or touch its pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>see above</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>set it: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>settle it this way</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>sheet {sheet}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>sheets of this lot</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>shipped</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>short {n} × {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>should weigh, no wrap</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>since</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>since {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>since {day}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>small parts in a holder or against the starting pin</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>split {n} off</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>stack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>station {station} packs it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>stays</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>stopped</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>stopped since {at}: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>supervisor</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>take from</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>that is it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>the first by due time whose parts are all there; or scan or touch one</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>thick</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>this small part in a holder or against the starting pin</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>to be made good, try {n} of {most} · {here} {here|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>to rework</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>today {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>top edge at {at} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>typing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>under its master, {part}: {n} there now, mark is {mark}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>vacuum bed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>vacuum on, gauge steady</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>value</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>waits for {part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>wants {name}: not known</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>weight</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>whole</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>will not last a sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>worker</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>worker {by} {did} at {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>wrap</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>wrong</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>zone</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{batch}, sheet {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{batch}, sheet {sheet}: should be off</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{cart} in hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{cart} is at the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{cart} is back from the door</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{cart} is not at the door yet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{cart} left, packs on it: {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} not shared</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} of {most} {count|is|are} whole</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|batch|batches} of the old revision {count|is|are} held.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|hold-down|hold-downs}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|piece|pieces}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|problem|problems}: nothing was set.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|sheet was|sheets were} cut.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|sheet|sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {count|waits|wait}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {part} there by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{count} {part} {count|goes|go} on now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{day}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{due} is no time</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{due}, {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{faults}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field} cannot be below 0</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field} is one of {words}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field} must be above 0</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field} names one thing twice</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: each quantity is 1 or more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: type it and press Enter.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: write it as 14:00</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: write it as 2026-11-25</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: write it as 2026-11-25 14:00</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{field}: {value}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file} is not written in UTF-8. Save it as CSV UTF-8 and try again.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file} is too large for a list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file}. Keep a copy away from this PC.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file}: {n} {n|problem|problems}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{file}: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{first} and {last}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{first}, {next}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{gone} {gone|is|are} missing from batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g on the scale, {grams} ± {plus} g expected</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g on the scale: as it should be</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g on the scale: can't tell</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g ± {p}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g, as it should be</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g: can't tell</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{g} g: look again</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{here} {here|part|parts} here · {stubs} {stubs|tab stub|tab stubs} to trim</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{id} is {lost} here: keep its zeros</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{id} stands in line {n} already</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{kind} follows from the work and is not set by hand</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{kind} {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{kind} {id} is changed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{kind} {id} is new</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{kind} {id}: {field}, page {page} of {pages}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{k|slip for sheet|slips for sheets} {sheets} of {all} · cut on {routers}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{left} {left|is|are} left here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{left} {left|stays|stay} here.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{left} {part} left here, not {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{left} {part} left here, not {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{lift}Eye and ear protection. Nobody reaches over a moving bed; isolate the spindle before hands go near the bit. {hold}{local}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{lines} · {state}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{lines}, {parts} {parts|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{list}: there is no {text}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{list}: {count}, page {page} of {pages}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{l} × {w} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{material} · {sheets} {sheets|sheet|sheets} · {count} {count|part|parts} a sheet, {tabs} {tabs|tab|tabs}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{material}, lot {lot}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{material}: scan its lot</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{metres} m cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{metres} m left</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{minutes} min</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{minutes} min a sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{minutes} min left</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{mm} mm read</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{mm} mm: within limits</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{most} of these on a sheet</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} does not run this file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} is in the list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} is missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} must be a list</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} must be {wanted}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} needs {count} {count|value|values}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} revision {letter} is approved</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name} {count}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name}: batch {batch}, {qty} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name}: which router?</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{name}: {n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n|pack left|packs left}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n|piece|pieces}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n|sheet|sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} CSV {n|file|files}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} at popping</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} being cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} good</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} h</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} in rework</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} in trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} min</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} more than the book says</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} more to put back.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} more; mend these first.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} of the next part</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} of {all}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} of {mark}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} put back on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} rework</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} still to be cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} there</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} there by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} to count</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} to go.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} too many: put back</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|goes|go} back on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|is|are} here, {seen} when you took it: {who}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|is|are} in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|line|lines}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|pack|packs}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|pack|packs}, goes at {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|problem|problems}: nothing was taken in</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|sheet|sheets}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|sheet|sheets} cut</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|stays|stay} here under {n|its slip|their slips}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|stays|stay} in rack {place}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|tab|tabs} instead of {old}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {n|value|values}, wanted: {wanted}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {part} (rack {place})</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {part} would be owed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {part} {n|is|are} owed to order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} {part} {n|is|are} wanted</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} × {part} in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} × {part} it is</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} × {part} put back: rack {place}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{n} × {part}, not {was}: {inside} in the pack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{parts} left: {who}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{parts} to trim: say what is not good.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{parts}: say what is not good, pass on.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{parts}: say which are good.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} agrees with its master</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} differs from its master</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} has no outline in the book. Choose by eye.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} has no place on the rack</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} has no rack place</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} has no weight in the book. Count the pack.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} is not in batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} is not in order {order}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} is not missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} is not short</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} is there now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} was tried twice</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part} {size}: {mm} mm, limits {low} to {high}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}, batch {batch}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}, {n} {n|tab|tabs}: {where}.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: one less</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: one more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: {book} by the book, {counted} counted at packing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: {count} here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: {count} {what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{part}: {n} in rack {place} by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{place}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{popping} in popping, {trimming} in trimming</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{quantity} found, {left} still missing</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{quantity} split off as batch {child}, {left} {left|stays|stay}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{rate} an hour</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{reading} mm read, limits are {low} to {high}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} can't run this cut file</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} is in front of you</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} is not served here</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} is not stopped</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} is re-homed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} is stopped since {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} need not be re-homed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} stopped: {why}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{router} · {bed}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{share} % of its life</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{sheets} {sheets|sheet|sheets} received, lot {lot}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{spoiled} spoiled</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{state}: change it</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{text}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{text} is no count</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{text} is no number</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{text} is no time</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{text} is no weight</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{title}: {n} more</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{t} mm</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{value} is not a record</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{what}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{what} {id}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{what} {id}, new</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{what}: none by the book</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{where}, due {at}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{why}. Scan its traveller.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{words} · {k|sheet|sheets} {sheets} · {n} {n|part|parts}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{words} · {left} of {sheets} {sheets|sheet|sheets} · {material}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{words} · {tabs} {tabs|tab|tabs}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{words} · ≈ batch assumed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{words}, no. {bit}</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>{wrong}: {size} mm needed</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>“Sheet spoiled” again when it is complete.</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>“{words}” does nothing here now</source>
      <translation type="unfinished" />
    </message>
    <message>
      <source>▲ holding up</source>
      <translation type="unfinished" />
    </message>
  </context>
</TS>

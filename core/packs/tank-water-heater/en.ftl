# The pack 'tank water heater' in English. The keys are named in core/src/procedure/pack.rs.

pack = Tank unit for hot water
    .name = Yearly service of a one-piece tank unit

## Questions

condition-first-service = Is this the first service of this unit?
condition-first-service-yes = Yes, the first
condition-first-service-no = No

condition-coil = How are the fins of the air coil?
condition-coil-plain = Plain metal
condition-coil-coated = Coated (coloured, or the maker says so)

condition-ducts = Does the air come or go through ducts?
condition-ducts-yes = Yes, ducts
condition-ducts-no = No, from the room

condition-anode = Which anode protects the cylinder?
condition-anode-sacrificial = A sacrificial rod: it is used up
condition-anode-impressed = Impressed current: it has a supply or a lamp

condition-element = Is lime to be taken off a removable heating element?
condition-element-due = Yes: it stands in the water, and it is due
condition-element-not-due = No: not due, dry in a sleeve, or none

condition-certificate = Do you hold the certificate for this refrigerant circuit?
condition-certificate-yes = Yes, and it is valid
condition-certificate-no = No: the circuit stays shut

condition-reheat = Is the cylinder back at its disinfecting temperature?
condition-reheat-reached = Yes, reached and read off
condition-reheat-pending = Not yet; the owner knows that it is still to come

## Instruments

instrument-air-thermometer = Air thermometer
instrument-pipe-thermometer = Pipe clamp thermometer
instrument-power-meter = Power meter
instrument-hardness-kit = Hardness test kit
instrument-insulation-tester = Insulation tester
instrument-capacitance-meter = Capacitance meter
instrument-low-side-gauge = Gauge of the low side
instrument-high-side-gauge = Gauge of the high side
instrument-water-gauge = Water pressure gauge
instrument-caliper = Caliper
instrument-voltmeter = Voltmeter

## Readings

reading-serial = Serial number of the unit
    .hint = Copy it from the nameplate, letter by letter.
reading-controller-serial = Serial number of the controller
    .hint = On the controller's back or in its info menu.
reading-hours = Running hours of the compressor
    .hint = From the controller, if it counts them.
reading-air-on-found = Air on to the coil, as found
    .hint = In the shade, a hand's width before the fins.
reading-air-off-found = Air off the fan, as found
    .hint = In the middle of the air stream, outside of the guard.
reading-power-found = Power taken, as found
    .hint = Compressor and fan together, steady, no heating element on.
reading-tank-found = Cylinder temperature, as found
    .hint = From the controller or the cylinder's own thermometer.
reading-low-pressure-found = Pressure of the low side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-high-pressure-found = Pressure of the high side, as found
    .hint = Above the atmosphere. Only if you are certified and it has a port. Sealed: leave it empty.
reading-suction-line-found = Suction pipe, as found
    .hint = Clamp on bare pipe before the compressor, lagging over it.
reading-discharge-line-found = Discharge pipe, as found
    .hint = Clamp a hand's width after the compressor. Hot: do not touch the pipe.
reading-liquid-line-found = Liquid pipe, as found
    .hint = Clamp on bare pipe where it leaves the cylinder's jacket, before the expansion.
reading-feed-pressure = Pressure of the cold feed
    .hint = At rest, all taps shut.
reading-valve-setting = Setting of the safety valve
    .hint = Stamped on it. 1 bar is 100 kPa.
reading-vessel-precharge = Precharge of the expansion vessel
    .hint = At its air valve, with the pressure of the water let off. No vessel: leave it empty.
reading-supply-hardness = Hardness of the supply water
    .hint = As calcium carbonate. Tells when descaling is next due.
reading-water-use = Hot water used in a day
    .hint = Ask the owner: about 50 L (13 gal) a person. It tells when to descale next.
reading-fitting-temperature = Temperature at the fitting
    .hint = On the bare fitting or at the open tap. Above 30 °C (86 °F): wait.
reading-anode-diameter = Diameter left on the anode, in mm
    .hint = At the thinnest place. Less than two thirds of a new one, or the wire bare: replace it.
reading-anode-new-diameter = Diameter of a new anode, in mm
    .hint = From the maker, or of the one that you put in.
reading-anode-voltage = Voltage of the impressed-current anode
    .hint = At the clamps of its supply, if they can be reached safely. Else leave it empty.
reading-cleaner-parts = Parts of water to 1 part of cleaner
    .hint = From the label of the cleaner in your hand.
reading-cleaner-percent = Cleaner in the ready mix, percent
    .hint = Only if the label says it so: the share of the whole.
reading-cleaner-dose = Cleaner to one litre of water
    .hint = Only if the label says it so: mL to 1 L, or fl oz to 1 US gal.
reading-cleaner-volume = Cleaner wanted in all
    .hint = Enough to wet every fin once.
reading-insulation = Insulation resistance to earth
    .hint = The lowest value. Low readings with refrigerant in the oil are common: run and test again.
reading-winding-temperature = Temperature of the winding
    .hint = Clamp on the compressor's shell. For comparing with other years.
reading-capacitance = Capacitance of the run capacitor
    .hint = Discharged first, one lead off. Compare with its label.
reading-capacitance-label = Label of the run capacitor
    .hint = The value printed on it, in µF.
reading-air-on-left = Air on to the coil, as left
    .hint = Same place as before.
reading-air-off-left = Air off the fan, as left
    .hint = Same place as before.
reading-power-left = Power taken, as left
    .hint = Steady, no heating element on.
reading-tank-left = Cylinder temperature, as left
    .hint = Same thermometer as before.
reading-suction-line-left = Suction pipe, as left
    .hint = Same clamp, same place.
reading-discharge-line-left = Discharge pipe, as left
    .hint = Same clamp, same place. Hot: do not touch the pipe.
reading-liquid-line-left = Liquid pipe, as left
    .hint = Same clamp, same place.
reading-low-pressure-left = Pressure of the low side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-high-pressure-left = Pressure of the high side, as left
    .hint = Same gauge. Sealed: leave it empty.
reading-tap-hot = Hot water at the tap
    .hint = Nearest tap, after one minute. Hotter than people can bear: see the mixing valve.

## Photographs

shot-casing-before = The unit before the work
    .show = The whole unit, its place and what stands around it. Shows how you found it.
shot-nameplate = Nameplate
    .show = Every line readable: model, refrigerant, pressures, current.
shot-serial-plate = Serial number
    .show = The serial number alone, close and sharp. Proves which unit it was.
shot-controller-plate = Controller's serial number
    .show = The number on the controller or in its menu.
shot-settings-before = Settings as found
    .show = The display with set point, mode and timer. They go back to these.
shot-tag = Lock and tag
    .show = The isolator off, with your lock and tag on it.
shot-wiring-before = Wiring before the work
    .show = Terminals and plugs before you touch them. It shows where each wire goes.
shot-coil-before = Air coil before
    .show = The whole coil, square on, then hold this place for the picture after.
shot-coating = Coating of the fins
    .show = A hand's width of fins, close. Shows whether the coating is whole.
shot-coil-after = Air coil after
    .show = The same view as before, rinsed. You see light through clean fins.
shot-filter = Air filter as found
    .show = The filter against the light. Shows how much air it let through.
shot-trap = Condensate trap
    .show = Drain pan, hose and trap, clean, with water standing in the trap.
shot-safety-group = Safety group
    .show = Valve with its stamped setting, its open outlet and the non-return valve.
shot-anode-state = Anode
    .show = The whole rod beside a rule. Shows what is left of it.
shot-anode-display = Display of the impressed-current anode
    .show = Its lamp or page, with no fault shown.
shot-element-state = Element and inside of the cylinder
    .show = The element cleaned, its sealing face, and the floor of the cylinder.
shot-wiring-after = Wiring after the work
    .show = The same view as before: dry, every plug in, every wire back.
shot-mounting = Feet, bolts and pipes
    .show = Feet, bolts, anti-vibration mounts and where pipes and cables enter.
shot-casing-after = The unit after the work
    .show = The same view as before: closed, clean, nothing left behind.
shot-display-left = Display while running
    .show = The unit running, with no fault shown.
shot-settings-after = Settings as left
    .show = The same display as before. Each value as found.

## What comes along

chemical-degreaser = Degreaser for plain coils
chemical-neutral-cleaner = pH-neutral coil cleaner
part-anode = Sacrificial anode
part-anode-seal = Seal for the anode
part-element-seal = Seal for the element's flange
part-air-filter = Air filter
part-cable-seal = Seal for a cable entry
gear-detector = Refrigerant detector
gear-lock-and-tag = Lock and tag
gear-voltage-tester = Two-pole voltage tester
gear-goggles = Goggles
gear-chemical-gloves = Long chemical gloves
gear-apron = Chemical apron
gear-spray-covers = Bags and tape for the electrics
gear-brush = Soft brush
gear-sprayer = Low-pressure sprayer
gear-bucket = Two buckets
gear-pipe-clamps = Pipe clamp thermometers
gear-gauges = Gauges for this refrigerant
gear-drain-hose = Drain hose
gear-wet-vacuum = Wet vacuum, wooden and plastic scrapers

## Dilutions

mix-degreaser = Coil cleaner for plain fins
    .concentrate = Degreaser for coils
    .water = Clean water
    .order-1 = Water into the sprayer.
    .order-2 = Then the cleaner, slowly.
    .order-3 = Close and swing gently. Never mix it with anything else.
    .gear = Goggles, long chemical gloves, apron. The label comes first.
mix-neutral-cleaner = Neutral cleaner for coated fins
    .concentrate = pH-neutral coil cleaner
    .water = Clean water
    .order-1 = Water into the sprayer.
    .order-2 = Then the cleaner.
    .order-3 = Close and swing gently.
    .gear = Goggles and gloves. The label comes first.

## Settings

excursion-schedule = Timer and mode
    .why = So that the unit runs when you measure, and a programme does not start it.
excursion-set-point = Hot-water set point
    .why = Lowered so that the unit does not call for heat at once when power comes back.

## Arrive and make safe

phase-arrive = Arrive and make safe
    .owner = We looked at the place and made it safe to work.
    .matters = A safe start keeps people, the house and the machine from harm.

step-approach = Air the room; look, smell, read the detector
    .why = Escaped refrigerant gathers low in a room. It can burn or take the air away, and you cannot always smell it.
    .how = Door and window open before you stay. Read the refrigerant off the plate. If it can burn (R290, R32): detector first, low down; phone, torch and vacuum cleaner stay outside until it reads clear. Any alarm: out, keep sparks away, air the place, call the certified person.

step-fit-to-run = See that it is fit to run
    .why = A damp, damaged or leaking unit must not run, not even to measure it.
    .how = Whole, dry, covers on, air free on both sides, filter and ducts in place. Cold feed open, cylinder full, the drain of the safety valve open to the air. Damp, damaged, leaking or dead: leave this step out and say why.

## Identify

phase-identify = Identify the unit
    .owner = We made sure that it was your machine, and wrote down its numbers.
    .matters = The right numbers keep your warranty and your history straight.

step-right-unit = Prove that it is the right unit
    .why = The record and the warranty hold for this serial number only.
    .how = Compare the serial number with the job. If it is another: stop and ask the office.

step-know-unit = Answer what kind of unit it is
    .why = The answers decide which steps come. The condenser lies around the cylinder, so no acid has any business here.
    .how = Look at plate and manual: anode, element, ducts. In doubt about the coil's coating: coated.

## As found

phase-as-found = As found
    .owner = We measured how the machine ran before we touched it.
    .matters = Only numbers from before and after show what the service did.

step-settings-found = Note the settings, then set the timer to manual
    .why = Timers and modes must go back exactly as the owner had them.
    .how = Photograph every page first. Write down the value you find and the one you set.

step-run-found = Run it until it is steady
    .why = Readings mean something only when the running is settled.
    .how = Draw hot water if it does not start. A quarter of an hour, no defrost, no heating element. Listen for fan and compressor, look whether condensate drips. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-found = Take the readings as found
    .why = The same readings are taken again at the end.
    .how = All of them within a few minutes. Mark where the clamps sit: they come back to the same place.

step-gauges-found = Gauges only where they may be opened: as found
    .why = Clamps tell most of it. Each time gauges go on, a sealed unit loses some of its charge.
    .how = Only with ports, with gauges rated for this refrigerant, and if the clamps leave a question. Short hoses, goggles, gloves. Detector on for R290 and R32. Sealed: leave this step out.

step-safety-valve = Lift the safety valve and look at the expansion
    .why = Heated water grows. If it has no way out, the cylinder bursts; if the non-return valve fails, warm water goes back into the mains.
    .how = Hands and face away from the outlet: it may be scalding. Lift once, let it snap shut, see that it stops. No valve between it and the cylinder, outlet open, non-return valve in the feed. Missing or stuck: unsafe finding, call the licensed person, do not heat.

## Isolate and open

phase-isolate = Isolate and open
    .owner = We switched the power off, locked it and tested that it was off.
    .matters = Nobody can be hurt by a machine that cannot start.

step-lower-set-point = Lower the hot-water set point and stop the unit
    .why = When power comes back it must not start heating before you are ready.
    .how = Write down the value first. Let pump and fan run down.

step-lock-off = Switch every supply off, lock it, tag it
    .why = Off is not isolated. Only your own lock stops somebody from switching it on.
    .how = The unit, its heating element, an off-peak supply, a solar signal, the supply of the anode: find them all. Your lock, your tag, your key in your pocket. The licensed person decides where local codes say so.

step-wait-charge = Wait until the charge has gone
    .why = Capacitors and drives stay charged after the power is off.
    .how = The time on the maker's label comes first. Keep the covers on.
    .then = The covers still stay on: test for dead next.

step-test-dead = Prove the tester, then test that it is dead
    .why = An isolator can fail, and a tester can too.
    .how = Tester on a known live source: it shows. Then every pole to every pole and to earth, at each isolator's outgoing side or behind its terminal lid. Then every further supply. Work as if it were live.

step-prove-tester = Prove the tester again
    .why = A tester that died in between would show 'dead' on a live wire.
    .how = Same live source as before. It must show again. If not: the test does not count.

step-covers-off = Take the hood off and uncover the fan
    .why = Coil, pan and filter are cleaned from above.
    .how = Photograph the wiring first. Keep the screws apart. Stand safely. Mind sharp edges and hot pipes. Do not loosen any refrigerant fitting.

## Air side

phase-air-side = Clean filter, coil and drain
    .owner = We cleaned the filter and the fins that take warmth out of the air, and the drain of their water.
    .matters = Free air saves power, and a free drain keeps the floor dry.

step-open-air-path = Take the filter out; loosen the duct ends
    .why = A choked filter makes the coil freeze and the compressor work hard.
    .how = Photograph it against the light. Wash it in cool water with mild soap and let it dry, or put a new one in later. Mark the ducts.

step-cover-electrics = Cover the electrics below the coil
    .why = Here water falls right onto terminals and boards: faults and shocks, even days later.
    .how = Bag board, terminals, fan motor and plugs, tape the open side down. A sheet from the coil's foot into the drain pan. Little water, often.

step-brush-coil = Gear on, feel the coil cold, brush it dry
    .why = Wet dirt turns to mud between the fins; spray on a hot part splashes and warps it.
    .how = Goggles, gloves, long sleeves, mask. Coil and compressor must be hand-cold. Photograph, then soft brush along the fins. Vacuum the rest only where the refrigerant cannot burn. No brush across the fins.

step-mix-degreaser = Mix the coil cleaner for plain fins
    .why = Too strong eats the fins; too weak leaves the grease.
    .how = Many degreasers are alkaline: keep them away from the descaler and every acid.

step-mix-neutral = Look at the coating, mix the neutral cleaner
    .why = Alkali and acid lift the coating; after that the fins rot.
    .how = Photograph the coating. Blisters or bare spots are a finding. Only a pH-neutral cleaner that the coating's maker allows.

step-soak-coil = Spray the cleaner on and let it soak
    .why = The cleaner needs time to loosen what the brush left.
    .how = Hand sprayer, no lance. Only so much as the drain pan takes: see that it runs off before you go on. It must not dry. Air the room.
    .then = Rinse at once, before it dries.

step-rinse-coil = Rinse the coil, little water, into the pan
    .why = Bent fins block the air; cleaner left behind eats them; water beside the pan reaches the electrics.
    .how = Hand sprayer, nozzle square to the fins, 100 mm (4 in) away, moving only along them. Take up with a sponge what does not run off. Go on until no foam comes. Get rid of the run-off by local rules.

step-condensate = Clean pan, drain and trap; fill the trap
    .why = A blocked drain floods the electrics; a dry trap lets foul air in.
    .how = Wipe the pan, rinse the hose through, clean the trap and fill it. Pour half a litre (a pint) into the pan: all of it must run off, with fall all the way and an open end.

step-ducts = Look through the ducts
    .why = Dust, nests and kinks take the air away; wet ducts grow mould.
    .how = Free, tight, lagged where they sweat, screens clean. No duct from a kitchen hood, and none that pulls air from a boiler with an open flame.

step-close-air-path = Put filter and ducts back
    .why = Without air the compressor trips or the coil freezes.
    .how = Filter dry and the right way round, ducts tight, nothing left in them.

## Water side

phase-water-side = Look after the cylinder
    .owner = We looked at the parts that protect your cylinder from rust and pressure, and filled it again with fresh water.
    .matters = A cylinder with a used-up anode rusts through within a few years.

step-cool-tank = Cool the upper fittings; measure that they are cold
    .why = The hottest water stands at the top, right behind the anode. It scalds in seconds.
    .how = Heating locked out: run a hot tap until it comes cold, or wait. Tell the owner first. Measure at the fitting.

step-shut-feed = Shut the cold feed
    .why = While it is open the pressure comes back at once.
    .how = Turn it slowly. Does not shut: leave the fittings closed and note the valve as a finding.

step-relieve = Let the pressure out and drain a few litres
    .why = Under pressure the anode shoots out; the sediment goes with the first litres.
    .how = Hose on the drain, to a floor drain, a hot tap open for air. Drain until the water stands below the fitting: about ten litres (2.6 gal). It must run out without force. Now measure the vessel's precharge.

step-anode = Take the anode out, measure it, renew it
    .why = It rusts in place of the cylinder, until nothing is left of it.
    .how = Loosen slowly, face away; hissing or dripping: wait. Photograph it beside a rule. Less than two thirds of its thickness left or bare wire: a new one of the same metal. New seal, earth wire back on, the maker's torque.

step-element-lime = Empty it, take the element out, lime off by hand
    .why = Lime insulates the element until it burns out. Acid in a cylinder attacks the enamel and stays in drinking water.
    .how = Drain it all. Mark and take off the wires. Wood and plastic only, never metal on enamel, never acid. Lift lime out; a wet vacuum only where the refrigerant cannot burn. Rinse it out through the drain. New seal, screws crosswise.

step-refill = Fill it, let the air out, flush every hot tap
    .why = An element above the water burns out; what the work loosened must not be drunk.
    .how = Open the feed slowly, the drain still open until it runs clear; then shut the drain. A hot tap open until no air comes, then flush each hot tap. Look at every fitting: dry.

## Electrics

phase-electrics = Check the electrics
    .owner = We checked the wiring, looked for damp and tested the safety wire.
    .matters = Dry, tight wiring is safe wiring.

step-look-damp = Uncover the electrics and look for damp
    .why = Power on damp parts gives faults, fire and shocks.
    .how = Take the bags off without spilling. Look under boards and into plugs. Damp: wipe, warm dry air, wait, look again. Only dry counts.

step-unplug-electronics = Unplug the electronics for the insulation test
    .why = The test voltage kills boards, drives and sensors.
    .how = Only where the maker allows the test. Otherwise leave both steps out and say why. Board, drive, sensors: each plug marked.

step-insulation-test = Test the insulation
    .why = A weak winding or cable is found before it fails or shocks.
    .how = The maker's voltage, all live poles together to earth, never with the compressor under vacuum. Discharge after the test. A low value with refrigerant in the oil is common: test again after running warm.

step-terminals = Plug all back; check earth and terminals
    .why = A loose terminal burns; a loose earth kills.
    .how = Every plug back as in the photograph. Earth continuous from plate to supply. Terminals at the maker's torque. A capacitor is discharged before it is measured.

step-thermostat = Check thermostat, cut-out and element
    .why = They keep the water from boiling when something fails.
    .how = Sensors pushed home in their pockets, clips tight, cut-out not bridged, leads not brown. A cut-out that has tripped is a finding: look for the reason before you reset it.

step-first-extras = First service: stand, fixings, seals, lagging
    .why = What settles in the first year shows now.
    .how = Level, standing firmly or held at the wall, pipes without strain and lagged, cable entries sealed, terminals at full torque, room large enough by the plate, papers complete. Note what the installer must put right.

## Reassemble

phase-reassemble = Close up and switch on
    .owner = We closed the machine and put the power back in the right order.
    .matters = Covers and guards keep children, water and animals out.

step-close-unit = Detector clear inside, then close the unit
    .why = A leak gathers low in the hood; the fan must never be free.
    .how = Detector low inside. Turn the fan by hand: free, no tools inside. Guard and hood on, all screws. Wipe the casing.

step-power-on = Take your lock off and put the power on
    .why = Now it may start by itself.
    .how = Cylinder full, feed open, no leak, air free. Unit first, then the further supplies. Listen and smell: anything odd, off again.

step-set-point-home = Put the set point back
    .why = The owner wants the water as it was, and the legionella heating needs it.
    .how = Write down what the controller shows now.

## As left

phase-as-left = As left
    .owner = We measured again, in the same places, to see what the service changed.
    .matters = You see in numbers what you paid for.

step-run-left = Run it until it is steady
    .why = The readings can be compared only if the running is as settled as before.
    .how = A quarter of an hour, no defrost, no heating element. Look for leaks. Hands and clothes away from the fan.
    .then = If the temperatures hold for five minutes, take the readings.

step-read-left = Take the same readings again
    .why = Before and after show what the work changed.
    .how = Same places, same instruments, all within a few minutes.

step-gauges-left = Gauges only where they may be opened: as left
    .why = The pressures tell whether the circuit changed.
    .how = Same gauges, same ports. Take them off quickly, caps on, then the detector at each port.

step-impressed-anode = See that the impressed-current anode works
    .why = Without current the cylinder rusts, and nobody notices.
    .how = Lamp or page without fault. It must never be switched off with the unit: tell the owner.

step-schedule-home = Put timer and mode back
    .why = A timer left on manual costs money and may leave the water cold.
    .how = Compare each page with the photograph as found. Check the clock too.

## Hand over

phase-hand-over = Hand over
    .owner = We checked the hot water at the tap and told you what comes next.
    .matters = Water that is too hot burns; water that is too cool can carry germs.

step-check-hot-water = Check the tap for scalding and the reheating
    .why = Too hot scalds in seconds; too cool for long breeds legionella.
    .how = Measure at the nearest tap. Too hot: mixing valve, tell the owner, do not leave it. Read the cylinder: disinfecting temperature reached, or tell the owner when it will be. Guide values: 60 °C (140 °F) stored, mixed down near the tap (WHO 2007, from memory). Local codes come first.

step-tell-owner = Tell the owner and leave the place clean
    .why = The owner must know what was done, what was found and what comes next.
    .how = What was done, each finding, whom to call, next date. If reheating is still to come: until when to be careful with the water. Take the waste with you.

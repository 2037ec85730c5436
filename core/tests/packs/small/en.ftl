pack = Fresh-air box
    .name = Yearly service of a fresh-air box

condition-filter = What kind of filter is it?
condition-filter-washable = Washable
condition-filter-paper = Paper

instrument-air-thermometer = Air thermometer

reading-air-found = Air from the box, as found
    .hint = In the middle of the stream.
reading-air-left = Air from the box, as left
    .hint = In the same place.
reading-soap-parts = Parts of water to one part of soap
    .hint = As the label says.
reading-soap-volume = Soap water wanted in all
    .hint = The filter must lie under it.

shot-filter-before = Filter before
    .show = The whole filter, against the light. It shows how much it holds.
shot-filter-after = Filter after
    .show = The same view as before.

chemical-mild-soap = Mild soap
part-paper-filter = Paper filter
gear-bucket = Bucket

mix-soap-water = Soap water
    .concentrate = Mild soap
    .water = Clean water
    .order-1 = Water into the bucket.
    .order-2 = Then the soap.
    .gear = Gloves. The label comes first.

phase-arrive = Arrive
    .owner = We looked at the box and measured its air.
    .matters = Numbers from before show what the service did.
phase-filter = Filter
    .owner = We cleaned or changed the filter.
    .matters = Clean air for you, less work for the fan.
phase-leave = Leave

step-look = Look at the box and measure its air
    .why = Only numbers from before and after show what the service did.
step-lock = Switch the box off, lock it, tag it
    .why = The fan starts by itself.
    .how = Your own lock at the isolator. The drawer is opened, no cover.
step-draw-filter = Draw the filter out
    .why = Dust falls off a filter that is pulled.
step-soak-filter = Let the filter soak in soap water
    .why = Soap needs time to loosen grease.
    .then = Rinse it with clear water and shake it dry.
step-change-filter = Put a new paper filter into the frame
    .why = Paper cannot be washed.
step-put-back = Push the filter back in
    .why = Without it the fan clogs.
    .how = Arrow in the direction of the air.
step-unlock = Take your lock off and switch the box on
    .why = Now it may start.
step-read-left = Measure its air again
    .why = The same place, to compare.

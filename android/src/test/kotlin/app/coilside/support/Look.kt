package app.coilside.support

import android.view.View
import coilside.Action
import coilside.Block
import coilside.DwellState
import coilside.StepState
import coilside.Tone

/** What someone would do next who reads the screen from the top. */
sealed interface Move {
    data class Press(val what: Action) : Move

    data class Hold(val what: Action) : Move

    data class Choose(val field: String, val options: List<Pair<String, Action>>) : Move

    data class Type(val field: String) : Move

    /** The camera app is open, or our sheet asks for a photograph again. */
    data object Photograph : Move

    data object SkipWait : Move

    data object StopAlarm : Move

    data object AllowPlace : Move

    data class Stuck(val why: String) : Move
}

/** The first thing that the screen offers. Reads the views alone; `tests/browser/lib/screen.mjs` does the same on a page. */
fun look(window: View): Move {
    val views = window.all().toList()
    if (views.any { it.role == "alarm-stop" }) return Move.StopAlarm
    if (views.any { it.role == "place-allow" }) return Move.AllowPlace
    if (views.any { it.role == "photo-take" }) return Move.Photograph

    // A plain notice tells; it asks for nothing.
    for (notice in views.filter { it.role == "notice" }) {
        val button = notice.all().firstOrNull { it.press != null && !it.isQuiet() }
        if (notice.isPlain()) continue
        return button?.let(::pressed) ?: Move.Stuck(notice.words())
    }
    for (view in views) {
        val step = view.block as? Block.Step ?: continue
        if (step.state == StepState.OPEN || step.state == StepState.RUNNING) within(view)?.let { return it }
    }
    if (views.any { (it.block as? Block.Dwell)?.state == DwellState.RUNNING }) return Move.SkipWait
    val main = views.firstOrNull { it.role == "foot" }?.all()?.firstOrNull { it.press != null }
    return main?.let(::pressed) ?: Move.Stuck("nothing is offered")
}

/** The first thing in a step that may be done. */
private fun within(step: View): Move? {
    val views = step.all().toList()
    // What is measured during the wait is measured then.
    val later = views.any { (it.block as? Block.Dwell)?.state == DwellState.WAITING }
    for (view in views) {
        val choice = view.block as? Block.Choice ?: continue
        if (choice.chosen != null) continue
        val options = view.all().filter { it.press is Action.Choose }.map { it.said() to checkNotNull(it.press) }.toList()
        return Move.Choose(choice.field, options)
    }
    for (view in views) field(view, later)?.let { return it }
    for (view in views) {
        val button = (view.block as? Block.Button)?.button ?: continue
        if (button.tone != Tone.QUIET) return view.withPress(button.press)?.let(::pressed) ?: Move.Stuck("cannot be pressed: ${button.label}")
    }
    if (!later) {
        for (view in views) {
            val shot = view.block as? Block.Shot ?: continue
            if (shot.photos.isEmpty()) return view.withPress(shot.press.press)?.let(::pressed) ?: Move.Stuck("cannot be pressed: ${shot.title}")
        }
    }
    for (view in views) {
        val check = view.block as? Block.Check ?: continue
        if (!check.done) return view.withPress(check.press)?.let(::pressed) ?: Move.Stuck("cannot be ticked: ${check.label}")
    }
    return null
}

private fun field(view: View, later: Boolean): Move? {
    val block = view.block
    val (name, question, problem) = when (block) {
        is Block.Number -> Triple(block.field, block.question, block.problem)
        is Block.TextEntry -> Triple(block.field, block.question, block.problem)
        else -> return null
    }
    if (question != null) return view.withPress(question.confirm.press)?.let(::pressed) ?: Move.Stuck(question.text)
    if (problem != null) return Move.Stuck(problem)
    val input = view.input(name) ?: return Move.Stuck("nothing can be typed into $name")
    val open = if (block is Block.Number) block.taken == null else input.text.isEmpty()
    return if (open && !(later && input.text.isEmpty())) Move.Type(name) else null
}

private fun pressed(view: View): Move {
    val action = checkNotNull(view.press)
    return if (view.role == "hold") Move.Hold(action) else Move.Press(action)
}

private fun View.isQuiet() = getTag(app.coilside.R.id.tone) == Tone.QUIET

private fun View.isPlain() = getTag(app.coilside.R.id.tone) == Tone.PLAIN

package app.coilside.blocks

import coilside.Block
import coilside.DwellState

/** What the big digits of a waiting time say. [wordsKey] names the words below them. */
class DwellClock(val digits: String, val wordsKey: String)

/** The time to the least, then the time to the most, then the time past it. */
fun clockOf(block: Block.Dwell, nowMs: Long): DwellClock = when {
    nowMs < block.leastAtUtcMs -> DwellClock(span(block.leastAtUtcMs - nowMs), "to-least")
    nowMs < block.mostAtUtcMs -> DwellClock(span(block.mostAtUtcMs - nowMs), "to-most")
    else -> DwellClock("+" + span(nowMs - block.mostAtUtcMs), "past-most")
}

/** How much of the least is over, 0…1. */
fun shareOf(block: Block.Dwell, nowMs: Long): Float {
    if (block.leastMs <= 0) return 1f
    return (1f - (block.leastAtUtcMs - nowMs).toFloat() / block.leastMs).coerceIn(0f, 1f)
}

/** Minutes and seconds, and hours where there are any. A part of a second counts as a whole one. */
fun span(ms: Long): String {
    val all = (ms + MS_A_SECOND - 1) / MS_A_SECOND
    val (hours, minutes, seconds) = Triple(all / S_AN_HOUR, all / S_A_MINUTE % S_A_MINUTE, all % S_A_MINUTE)
    val two = { number: Long -> number.toString().padStart(2, '0') }
    return if (hours > 0) "$hours:${two(minutes)}:${two(seconds)}" else "$minutes:${two(seconds)}"
}

/** Whether its clock runs. */
val Block.Dwell.runs: Boolean
    get() = state == DwellState.RUNNING || state == DwellState.READY || state == DwellState.OVER

/** The waiting time that a screen is about: the only one that runs, where no more than one step is shown. */
fun loneDwell(blocks: List<Block>): Block.Dwell? {
    val running = dwells(blocks).filter { it.runs }
    return running.singleOrNull()?.takeIf { blocks.count { it is Block.Step } <= 1 }
}

/** Whether nothing beside the waiting time asks for a hand. */
fun onlyToWait(blocks: List<Block>): Boolean = blocks.all { block ->
    when (block) {
        is Block.Step -> onlyToWait(block.blocks)
        is Block.Number, is Block.TextEntry, is Block.Choice, is Block.Shot -> false
        else -> true
    }
}

/** Whether a clock runs anywhere. */
fun clockRuns(blocks: List<Block>): Boolean = dwells(blocks).any { it.runs }

/** The next moment at which a running waiting time passes a limit: then the screen is read again. None: none is ahead. */
fun nextLimit(blocks: List<Block>, nowMs: Long): Long? =
    dwells(blocks).filter { it.runs }.flatMap { listOf(it.leastAtUtcMs, it.mostAtUtcMs) }.filter { it > nowMs }.minOrNull()

private fun dwells(blocks: List<Block>): List<Block.Dwell> = blocks.flatMap { block ->
    when (block) {
        is Block.Dwell -> listOf(block)
        is Block.Step -> dwells(block.blocks)
        else -> emptyList()
    }
}

private const val MS_A_SECOND = 1000L
private const val S_A_MINUTE = 60L
private const val S_AN_HOUR = 3600L

package app.coilside.blocks

import org.json.JSONArray
import org.json.JSONException
import org.json.JSONObject

/** From pen down to pen up: points across and down. */
typealias Stroke = ArrayList<Pair<Int, Int>>

/** What a text holds; a text that is none draws nothing. */
fun strokesOf(text: String): ArrayList<Stroke> {
    val strokes = ArrayList<Stroke>()
    if (text.isEmpty()) return strokes
    try {
        val all = JSONObject(text).getJSONArray("strokes")
        for (at in 0 until all.length()) strokes += strokeOf(all.getJSONArray(at))
    } catch (none: JSONException) {
        strokes.clear()
    }
    return strokes
}

private fun strokeOf(points: JSONArray): Stroke {
    val stroke = Stroke()
    for (at in 0 until points.length()) points.getJSONArray(at).let { stroke += it.getInt(0) to it.getInt(1) }
    return stroke
}

/** Strokes as text; empty where nothing is drawn. */
fun textOf(wide: Int, high: Int, strokes: List<Stroke>): String {
    if (strokes.isEmpty()) return ""
    val all = strokes.joinToString(",", "[", "]") { stroke ->
        stroke.joinToString(",", "[", "]") { (x, y) -> "[$x,$y]" }
    }
    return """{"width":$wide,"height":$high,"strokes":$all}"""
}

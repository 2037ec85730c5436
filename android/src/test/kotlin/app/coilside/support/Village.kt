package app.coilside.support

import java.io.File

/** The visit that the scripted visits of all shells do: `office/src/demo/round.rs` has the same. Nobody and nothing in it is real. */
object Village {
    const val LATITUDE_DEG = 1.2345
    const val LONGITUDE_DEG = 2.3456
    const val ASSIGNMENT = "LW-0001-next"

    /** What the office would hand over, as `Door.assigned` takes it. */
    fun assignments(): String = File(root, "android/src/test/village.json").readText()
}

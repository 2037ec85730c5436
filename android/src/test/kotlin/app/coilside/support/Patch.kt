package app.coilside.support

import java.net.HttpURLConnection

/** Android's connections know the method PATCH, Java's own do not: they learn it here, in place of one that nobody sends. */
object Patch {
    fun known() {
        val methods = HttpURLConnection::class.java.getDeclaredField("methods").apply { isAccessible = true }.get(null)
        @Suppress("UNCHECKED_CAST")
        val names = methods as Array<String>
        if ("PATCH" !in names) names[names.indexOf("TRACE")] = "PATCH"
    }
}

package app.coilside

import android.content.Context
import android.net.Uri
import java.io.File

/** Folders and addresses of files that other apps write or read for us. */
object Folders {
    /** The authority of [PicturesProvider]. */
    const val AUTHORITY = "app.coilside.pictures"
    const val CAMERA = "camera"
    const val SHARED = "shared"

    /** Where the camera app puts its pictures before they are kept. */
    fun camera(context: Context): File = File(context.noBackupFilesDir, CAMERA).apply { mkdirs() }

    /** What is shared with another app, until the next one is. */
    fun shared(context: Context): File = File(context.cacheDir, SHARED).apply { mkdirs() }

    /** The address of a file in one of the two folders. */
    fun address(file: File): Uri =
        Uri.Builder().scheme("content").authority(AUTHORITY).appendPath(file.parentFile?.name).appendPath(file.name).build()

    /** The file of such an address; none for anything else. */
    fun fileOf(context: Context, address: Uri): File? {
        val (folder, name) = address.pathSegments.takeIf { it.size == 2 } ?: return null
        if (!NAME.matches(name)) return null
        return when (folder) {
            CAMERA -> File(camera(context), name)
            SHARED -> File(shared(context), name)
            else -> null
        }
    }

    private val NAME = Regex("[A-Za-z0-9_-]{1,120}\\.[a-z0-9]{1,5}")
}

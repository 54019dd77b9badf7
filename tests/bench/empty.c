/* bench/empty.c - does nothing, linked with everything that the text `check` links: what starting
 * such a process costs on this machine. */
#include <amd.h>
#include <cjson/cJSON.h>
#include <ldl.h>
#include <math.h>
#include <yaml.h>

int main(int argc, char **argv)
{
    if (argc < 100) return 0;
    /* never reached: keeps the linker from leaving the libraries out */
    double control[AMD_CONTROL];
    amd_defaults(control);
    int parent = 0, count = 0, flag = 0, pointer[2] = {0, 0};
    ldl_symbolic(0, pointer, pointer, pointer, &parent, &count, &flag, NULL, NULL);
    return (int)(control[0] + cos((double)argc)) + (cJSON_Version() != NULL) + (yaml_get_version_string() != NULL) + (argv[0] != NULL);
}
